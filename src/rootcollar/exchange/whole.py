"""Writing one file whole or not at all."""

from __future__ import annotations

from pathlib import Path
from tempfile import NamedTemporaryFile

from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["write_whole"]


def write_whole(path: Path, content: bytes) -> Path:
    """Write a file beside its place and move it there in one step; the old one stays until then. Return the path.

    Folders above it are made. Raises BadInput when nothing can be written there; then nothing is left behind.
    """
    made: Path | None = None
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(prefix=".rootcollar-", dir=path.parent, delete=False) as file:
            made = Path(file.name)
            file.write(content)
        made.replace(path)
    except OSError as fault:
        if made is not None:
            made.unlink(missing_ok=True)
        found = f"{path}, where nothing can be written ({fault.strerror or fault})"
        raise BadInput(Fault(found, "a file you may write to, with room; nothing was written")) from None
    return path
