"""The whole practice folder in one file, and back.

A backup is a ZIP file that any program opens. Its comment holds the SHA-256 of all bytes before
it, so that a backup that was cut or changed anywhere is refused before anything is put back.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import zipfile
from collections.abc import Iterator
from contextlib import ExitStack, suppress
from dataclasses import dataclass
from pathlib import Path

from drills.core.problems import BadInput, Failure
from drills.core.records import RECORD_FORMAT
from drills.ledger import disk
from drills.ledger.folder import (
    FORMAT,
    OLDER_PLANS,
    RECORDS,
    THERAPIST,
    plan_path,
    prepare,
    refuse_newer,
)
from drills.ledger.upkeep import sole_writer

_SIGN = b"sha256:"
_COMMENT_LENGTH = len(_SIGN) + hashlib.sha256().digest_size * 2
_PART = re.compile(
    rf"(?:(?:{RECORDS}|{OLDER_PLANS}|{THERAPIST})/)?[A-Za-z0-9][A-Za-z0-9 ._-]{{0,199}}"
)
_LARGEST_PART = 256 * 2**20
_CHUNK = 2**20
_EPOCH = (1980, 1, 1, 0, 0, 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Restored:
    """files: put back.   same: there already, byte for byte."""

    files: int
    same: int


def back_up(folder: Path, place: Path) -> int:
    """Write everything that cannot be made again into one new file; how many files it holds.

    Raises: BadInput when `place` is taken or there is nothing to keep; Failure.
    """
    refuse_newer(folder)
    parts = list(_parts(folder))
    if not parts:
        raise BadInput(f"There is nothing to back up in {folder}. Choose it with --folder.")
    if place.exists():
        raise BadInput(f"{place} is there already. Name a new file.")
    fresh = place.with_name(f"{place.name}.new")
    try:
        fresh.unlink(missing_ok=True)
        _write(folder, parts, fresh)
        _checked(fresh)
        fresh.rename(place)
        disk.sync_folder(place.parent)
    except OSError as error:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)
        why = disk.plain_reason(error)
        raise Failure(f"{place} could not be written, because {why}.") from error
    return len(parts)


def restore(folder: Path, place: Path) -> Restored:
    """Put a backup back, after checking all of it; a file that is there is never overwritten.

    Raises: BadInput for a backup that is not whole, or when a file in the folder is another one;
    Failure, and then nothing has been put back.
    """
    refuse_newer(folder)
    try:
        _checked(place)
        with zipfile.ZipFile(place) as archive:
            _refuse_newer_backup(archive, place)
            parts = _checked_parts(archive, place)
            prepare(folder)
            with sole_writer(folder):
                missing = [part for part in parts if not _is_same(folder, part, archive)]
                _require_room(folder, missing)
                _put_back(folder, missing, archive)
    except OSError as error:
        raise Failure(
            f"{place} could not be put back, because {disk.plain_reason(error)}."
        ) from error
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, ValueError) as error:
        raise BadInput(f"{place} is no backup that this program made.") from error
    return Restored(files=len(missing), same=len(parts) - len(missing))


def _parts(folder: Path) -> Iterator[str]:
    """Names of what is kept, as they stand in the folder: what can be made again is left out."""
    alone = [plan_path(folder), folder / FORMAT, *folder.glob("drills-unsaved*.jsonl")]
    rooms = (RECORDS, OLDER_PLANS, THERAPIST)
    inside = [path for name in rooms for path in (folder / name).glob("*")]
    for path in sorted([*alone, *inside]):
        if path.is_file() and not path.is_symlink() and path.suffix != ".new":
            name = path.relative_to(folder).as_posix()
            if _PART.fullmatch(name) is None:
                raise BadInput(f"{path} has a name that no backup can hold. Rename it.")
            yield name


def _write(folder: Path, parts: list[str], place: Path) -> None:
    with ExitStack() as stack:
        alone = True
        try:
            stack.enter_context(sole_writer(folder))
        except Failure:
            alone = False
        os.close(disk.create_file(place))
        with place.open("r+b") as file, zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
            for part in parts:
                data = (folder / part).read_bytes()
                if not alone and part.startswith((f"{RECORDS}/", f"{THERAPIST}/")):
                    # Another program may be in the middle of its last line.
                    data = data[: data.rfind(b"\n") + 1]
                archive.writestr(zipfile.ZipInfo(part, _EPOCH), data, zipfile.ZIP_DEFLATED)
            archive.comment = b"0" * _COMMENT_LENGTH
    sign = _digest(place).encode()
    with place.open("r+b") as file:
        file.seek(-len(sign), os.SEEK_END)
        file.write(sign)
        file.flush()
        disk.sync_file(file.fileno())


def _digest(place: Path) -> str:
    """Of all but the comment."""
    left = place.stat().st_size - _COMMENT_LENGTH
    digest = hashlib.sha256()
    with place.open("rb") as file:
        while left > 0 and (chunk := file.read(min(_CHUNK, left))):
            digest.update(chunk)
            left -= len(chunk)
    return _SIGN.decode() + digest.hexdigest()


def _checked(place: Path) -> None:
    """Raises: BadInput when the file is not, byte for byte, what was written."""
    size = place.stat().st_size
    with place.open("rb") as file:
        file.seek(max(size - _COMMENT_LENGTH, 0))
        comment = file.read()
    if not comment.startswith(_SIGN):
        raise BadInput(f"{place} is no backup, or its end is cut off. Nothing was put back.")
    if comment != _digest(place).encode():
        raise BadInput(f"{place} is damaged: its checksum does not fit. Nothing was put back.")


def _refuse_newer_backup(archive: zipfile.ZipFile, place: Path) -> None:
    if FORMAT not in archive.namelist():
        return
    said = archive.read(FORMAT)[:9]
    if said.strip().isdigit() and int(said) > RECORD_FORMAT:
        raise BadInput(f"{place} is from a newer program. Update this one first.")


def _checked_parts(archive: zipfile.ZipFile, place: Path) -> list[zipfile.ZipInfo]:
    """What the archive holds, when every part belongs into a practice folder."""
    parts = archive.infolist()
    named = [part.filename for part in parts]
    strange = [name for name in named if _PART.fullmatch(name) is None]
    too_large = [part.filename for part in parts if part.file_size > _LARGEST_PART]
    if strange or too_large or len(set(named)) < len(named):
        bad = ascii([*strange, *too_large, *named][0])
        raise BadInput(f"{place} holds {bad}, which no practice folder does. Nothing was put back.")
    return parts


def _is_same(folder: Path, part: zipfile.ZipInfo, archive: zipfile.ZipFile) -> bool:
    """Whether the file is there as it is in the backup.   Raises: BadInput when it is another."""
    path = folder / part.filename
    if not os.path.lexists(path):
        return False
    if path.is_symlink() or not path.is_file() or path.read_bytes() != archive.read(part):
        raise BadInput(
            f"{path} is there already and is another file. Nothing was put back. "
            "Put the backup into an empty folder with --folder."
        )
    return True


def _require_room(folder: Path, parts: list[zipfile.ZipInfo]) -> None:
    needed = sum(part.file_size for part in parts)
    if needed > shutil.disk_usage(folder).free:
        raise Failure(f"{folder} has no room for the {needed / 2**20:.0f} MiB of this backup.")


def _put_back(folder: Path, parts: list[zipfile.ZipInfo], archive: zipfile.ZipFile) -> None:
    written: list[Path] = []
    try:
        for part in parts:
            path = folder / part.filename
            disk.write_new(path, archive.read(part))
            written.append(path)
    except BaseException:
        # Half a folder would look like a whole one.
        for path in written:
            with suppress(OSError):
                path.unlink()
        raise
