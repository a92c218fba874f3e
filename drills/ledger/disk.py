"""Private files that are on disk, not in a buffer, when a call returns."""

from __future__ import annotations

import errno
import os
import sys
from pathlib import Path

PRIVATE_FILE = 0o600
PRIVATE_FOLDER = 0o700

# Without it Windows would turn each line feed into two bytes, behind the checksums' back.
_BINARY = getattr(os, "O_BINARY", 0)


def create_file(path: Path) -> int:
    """A new private file, open for appending.   Raises: FileExistsError, OSError."""
    flags = os.O_WRONLY | os.O_APPEND | os.O_CREAT | os.O_EXCL | _BINARY
    return os.open(path, flags, PRIVATE_FILE)


def open_file(path: Path) -> int:
    """A file that is there, open for appending."""
    return os.open(path, os.O_WRONLY | os.O_APPEND | _BINARY)


def write_all(file: int, data: bytes) -> None:
    """Write `data`, in one call unless the system takes less, and force it to disk."""
    written = os.write(file, data)
    while written < len(data):
        written += os.write(file, data[written:])
    sync_file(file)


def sync_file(file: int) -> None:
    if sys.platform == "darwin":
        import fcntl  # noqa: PLC0415  (not on Windows)

        # There fsync stops at the drive's own buffer.
        fcntl.fcntl(file, fcntl.F_FULLFSYNC)
    else:
        os.fsync(file)


def sync_folder(folder: Path) -> None:
    """Force a new or renamed name in `folder` to disk; Windows keeps names by itself."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def write_new(path: Path, data: bytes) -> None:
    """A new private file that holds `data`; no part of it stays when that fails."""
    file = create_file(path)
    try:
        write_all(file, data)
    except OSError:
        os.close(file)
        path.unlink()
        raise
    os.close(file)
    sync_folder(path.parent)


def replace_file(path: Path, data: bytes) -> None:
    """Put `data` in the place of `path` in one step: a reader sees the old or the new, whole."""
    fresh = path.with_name(path.name + ".new")
    fresh.unlink(missing_ok=True)
    write_new(fresh, data)
    fresh.replace(path)
    sync_folder(path.parent)


def free_name(path: Path) -> Path:
    """`path`, or the first of `path-2`, `path-3` ... that is not taken."""
    candidate, number = path, 1
    while candidate.exists():
        number += 1
        candidate = path.with_name(f"{path.stem}-{number}{path.suffix}")
    return candidate


_PLAIN = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk space allowed to this user is used up",
    errno.EFBIG: "the file may not grow further",
    errno.EROFS: "the disk can only be read",
    errno.EACCES: "this user may not write there",
    errno.EPERM: "this user may not write there",
    errno.EIO: "the disk reports a fault",
    errno.ENOENT: "the folder is no longer there",
    errno.ENOTDIR: "a file is in the way of the folder",
    errno.EEXIST: "a file is in the way of the folder",
}


def plain_reason(error: OSError) -> str:
    """Why the disk refused, as a plain clause."""
    known = _PLAIN.get(error.errno or 0)
    return known or (error.strerror or str(error)).lower()
