"""Files sent into the room, kept in memory for as long as it lives."""

from __future__ import annotations

import hashlib
import mimetypes
import struct
from dataclasses import dataclass

from .errors import bad

MOST_PHOTO_BYTES = 10_000_000
MOST_UPLOAD_BYTES = 50_000_000


@dataclass(frozen=True)
class Upload:
    name: str
    kind: str
    data: bytes


@dataclass(frozen=True)
class Stored:
    file_id: str
    unique_id: str
    path: str
    name: str
    kind: str
    data: bytes
    width: int = 0
    height: int = 0

    def sized(self) -> dict[str, object]:
        return {"file_id": self.file_id, "file_unique_id": self.unique_id, "file_size": len(self.data)}


class Files:
    def __init__(self) -> None:
        self.by_id: dict[str, Stored] = {}
        self.by_path: dict[str, Stored] = {}

    def store(self, upload: Upload, folder: str) -> Stored:
        if len(upload.data) > MOST_UPLOAD_BYTES:
            raise bad("file is too big")
        if not upload.data:
            raise bad("file must be non-empty")
        number = len(self.by_id) + 1
        kind = upload.kind
        if kind in ("", "application/octet-stream"):
            kind = mimetypes.guess_type(upload.name)[0] or "application/octet-stream"
        width, height = 0, 0
        if folder == "photos":
            if len(upload.data) > MOST_PHOTO_BYTES:
                raise bad("file is too big for a photo")
            found = picture_size(upload.data)
            if found is None:
                raise bad("IMAGE_PROCESS_FAILED")
            width, height = found
            if width + height > 10_000 or max(width, height) > 20 * min(width, height):
                raise bad("PHOTO_INVALID_DIMENSIONS")
        digest = hashlib.sha256(upload.data).hexdigest()
        ending = (upload.name.rpartition(".")[2] if "." in upload.name else "") or "bin"
        stored = Stored(
            f"room{number:06d}-{digest[:16]}", digest[:15], f"{folder}/file_{number}.{ending}",
            upload.name, kind, upload.data, width, height,
        )  # fmt: skip
        self.by_id[stored.file_id] = stored
        self.by_path[stored.path] = stored
        return stored

    def get(self, file_id: str) -> Stored:
        stored = self.by_id.get(file_id)
        if stored is None:
            raise bad("wrong file identifier/HTTP URL specified" if ":" in file_id else "wrong file_id or the file "
                      "is temporarily unavailable")  # fmt: skip
        return stored


def picture_size(data: bytes) -> tuple[int, int] | None:
    """Width and height of a PNG, JPEG, GIF or WebP picture; None for anything else."""
    if data.startswith(b"\x89PNG\r\n\x1a\n") and len(data) >= 24:
        return struct.unpack(">II", data[16:24])
    if data[:6] in (b"GIF87a", b"GIF89a") and len(data) >= 10:
        return struct.unpack("<HH", data[6:10])
    if data.startswith(b"\xff\xd8"):
        return _jpeg_size(data)
    return None


def _jpeg_size(data: bytes) -> tuple[int, int] | None:
    at = 2
    while at + 9 < len(data) and data[at] == 0xFF:
        marker = data[at + 1]
        if 0xC0 <= marker <= 0xCF and marker not in (0xC4, 0xC8, 0xCC):
            height, width = struct.unpack(">HH", data[at + 5 : at + 9])
            return width, height
        at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return None
