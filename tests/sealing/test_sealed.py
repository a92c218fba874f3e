"""What is sealed opens with its key alone, here and with other tools of the age format."""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import zlib
from base64 import b64decode
from collections import Counter
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.problems import BadInput
from drills.sealing import is_sealed, key_file_text, new_keys, private_keys, seal, unseal

PAIR, OTHER = new_keys(), new_keys()

# C2SP CCTV, age test vectors 0.2.0, as published (Zero-Clause BSD): each a header, then the file.
# Left out: those opened with a passphrase or a post-quantum key, which no plan can name.
VECTORS = {
    name: b64decode(text)
    for name, text in json.loads(
        (Path(__file__).parent / "age_testkit.json").read_text(encoding="utf-8")
    ).items()
}
# The library also opens two forms that earlier tools wrote; what is in them is still checked whole.
TAKEN_ALL_THE_SAME = {"stanza_missing_body", "stanza_missing_final_line"}
NO_MATCH = "F does not open with this key."
DAMAGED = "F is damaged."
NOT_SEALED = "F is not a sealed file, or its beginning is damaged."


def told(data: bytes, *keys: str) -> str:
    with pytest.raises(BadInput) as raised:
        unseal(data, keys or (PAIR.private,), "F")
    assert "\n" not in str(raised.value)
    return str(raised.value)


@given(st.binary(max_size=2000))
def test_what_is_sealed_opens_as_it_was(data: bytes) -> None:
    sealed = seal(data, PAIR.public)
    assert is_sealed(sealed)
    assert unseal(sealed, (OTHER.private, PAIR.private), "F") == data


def test_two_seals_of_the_same_differ() -> None:
    assert seal(b"the same", PAIR.public) != seal(b"the same", PAIR.public)


def test_another_key_does_not_open_it() -> None:
    assert told(seal(b"secret", PAIR.public), OTHER.private).startswith(NO_MATCH)


def test_each_byte_changed_or_cut_is_noticed() -> None:
    sealed = seal(b"the week", PAIR.public)
    for place in range(len(sealed)):
        changed = bytearray(sealed)
        changed[place] ^= 1
        told(bytes(changed))
        told(sealed[:place])
    assert told(sealed + b"more").startswith(DAMAGED)


def test_a_foreign_and_an_empty_file_are_told() -> None:
    assert told(b"PK\x03\x04 something else") == NOT_SEALED
    assert told(b"") == "F is empty. Ask for it again."
    assert told(b" \n") == "F is empty. Ask for it again."


@given(st.binary(max_size=400), st.booleans())
def test_any_bytes_are_told_of_in_one_sentence(data: bytes, begins_right: bool) -> None:
    told(b"age-encryption.org/v1\n" * begins_right + data)


@pytest.mark.parametrize("name", sorted(VECTORS))
def test_the_published_vectors_open_or_are_refused_as_they_say(name: str) -> None:
    head, _, data = VECTORS[name].partition(b"\n\n")
    fields = [line.partition(": ")[::2] for line in head.decode().splitlines()]
    values = dict(fields)
    if values.get("compressed") == "zlib":
        data = zlib.decompress(data)
    keys = [value for key, value in fields if key == "identity"] or [OTHER.private]
    assert private_keys("\n".join(keys).encode(), "k") == tuple(keys)
    match values["expect"]:
        case "success":
            opened = unseal(data, keys, "F")
            assert hashlib.sha256(opened).hexdigest() == values["payload"]
        case "no match":
            assert told(data, *keys).startswith(NO_MATCH)
        case _ if name in TAKEN_ALL_THE_SAME:
            assert unseal(data, keys, "F") == b"age"
        case _:
            assert told(data, *keys).startswith((DAMAGED, NOT_SEALED, "F is empty"))


def test_the_vectors_cover_every_way_to_fail() -> None:
    expected = Counter(
        data.partition(b"\n\n")[0].decode().partition("expect: ")[2].splitlines()[0]
        for data in VECTORS.values()
    )
    assert expected == {
        "success": 19,
        "no match": 4,
        "HMAC failure": 1,
        "header failure": 33,
        "armor failure": 22,
        "payload failure": 19,
    }


def test_the_age_command_opens_ours_and_we_open_its(tmp_path: Path) -> None:
    """Source: the `age` command (Debian package age) as the other reader and writer."""
    age = shutil.which("age")
    if age is None:
        pytest.skip("the age command is not installed here; the published vectors are held above")
    (tmp_path / "key").write_text(key_file_text(PAIR, date(2026, 11, 27)), encoding="ascii")
    (tmp_path / "ours").write_bytes(seal(b"the week", PAIR.public))
    opened = subprocess.run(
        [age, "-d", "-i", "key", "ours"], cwd=tmp_path, capture_output=True, check=True
    )
    assert opened.stdout == b"the week"
    for form in ([], ["-a"]):
        theirs = subprocess.run(
            [age, *form, "-r", PAIR.public], input=b"their week", capture_output=True, check=True
        )
        assert unseal(theirs.stdout, (PAIR.private,), "F") == b"their week"
    keygen = shutil.which("age-keygen")
    if keygen is not None:
        made = subprocess.run([keygen], capture_output=True, check=True).stdout
        (key,) = private_keys(made, "k")
        public = made.decode().partition("public key: ")[2].splitlines()[0]
        assert unseal(seal(b"x", public), (key,), "F") == b"x"
