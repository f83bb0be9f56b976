"""The table of devices that may read and change this book over the home network."""

from datetime import date

from sqlmodel import Field, SQLModel


class DeviceRow(SQLModel, table=True):
    """Only the digest of a device's token is kept; the exchange document does not carry it."""

    __tablename__ = "device"

    id: str = Field(primary_key=True)
    name: str
    token_sha256: str
    paired: date
    seen: date
    revoked: date | None
