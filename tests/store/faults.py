"""Ways in which a disk lets one down."""

import resource
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def no_file_longer_than(size: int) -> Iterator[None]:
    """While it lasts, a write beyond `size` bytes of any file fails, as on a disk without room."""
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, hard))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def torn(content: bytes) -> bytes:
    """The bytes of a file, a page in the middle of which came to grief."""
    middle = len(content) // 8192 * 4096
    return content[:middle] + b"\xa5" * 4096 + content[middle + 4096 :]
