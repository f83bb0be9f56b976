"""What a person asked for cannot be done: which field is at fault and what to do instead."""


class Refusal(Exception):
    """Met where a form was filled in well but the book says otherwise; shown beside `field`."""

    def __init__(self, field: str, message: str) -> None:
        super().__init__(message)
        self.field = field
        self.message = message
