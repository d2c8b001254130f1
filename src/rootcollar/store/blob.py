"""A shape as the GeoPackage keeps it: a short head, the box around the shape, then well-known binary.

Source: OGC GeoPackage 1.3, clause 2.1.3 (geometry encoding).
"""

from __future__ import annotations

import struct

import shapely
from shapely.geometry.base import BaseGeometry

from rootcollar.kernel.errors import BadInput, Fault

__all__ = ["SRS", "pack", "unpack", "wkb_of"]

SRS = 4326  # degrees of WGS 84: longitude first, latitude second, whatever the reference system's own order says

_MAGIC = b"GP"
_VERSION = 0
_LITTLE = 0x01
_BOX = 0x02  # bits 1 to 3 hold 1: a box of least and most x, least and most y
_EMPTY = 0x10
_EXTENDED = 0x20
_HEAD = 8  # bytes before the box
_BOXES = (0, 32, 48, 48, 64)  # bytes of each kind of box


def pack(shape: BaseGeometry, srs: int = SRS) -> bytes:
    """Return a shape as bytes. A point has no box, being its own. Heights are left out: the layers are flat."""
    flat = shapely.force_2d(shape) if shape.has_z else shape
    flags, box = _LITTLE, b""
    if flat.is_empty:
        flags |= _EMPTY
    elif flat.geom_type != "Point":
        flags |= _BOX
        left, low, right, high = flat.bounds
        box = struct.pack("<4d", left, right, low, high)
    head = struct.pack("<2sBBi", _MAGIC, _VERSION, flags, srs)
    return head + box + bytes(shapely.to_wkb(flat, byte_order=1))


def unpack(blob: object) -> tuple[BaseGeometry, int]:
    """Return shape and number of its reference system. Raises BadInput for bytes that are no such shape."""
    wkb, srs = wkb_of(blob)
    try:
        return shapely.from_wkb(wkb), srs
    except shapely.errors.GEOSException as fault:
        raise BadInput(Fault(f"a shape that cannot be read ({fault})", "a shape in well-known binary")) from None


def wkb_of(blob: object) -> tuple[bytes, int]:
    """Return the well-known binary within, and the number of its reference system. Raises BadInput as `unpack`."""
    allowed = "a shape as GeoPackage 1.3 keeps it"
    if not isinstance(blob, bytes) or len(blob) < _HEAD or not blob.startswith(_MAGIC):
        raise BadInput(Fault("something else where a shape should stand", allowed))
    version, flags = blob[2], blob[3]
    kind = flags >> 1 & 0b111
    if version != _VERSION or flags & _EXTENDED or kind >= len(_BOXES):
        raise BadInput(Fault(f"a shape of version {version} with flags {flags:#04x}", allowed))
    (srs,) = struct.unpack("<i" if flags & _LITTLE else ">i", blob[4:_HEAD])
    return blob[_HEAD + _BOXES[kind] :], srs
