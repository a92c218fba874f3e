"""Keys: what a key file holds, and one sentence for each that is none."""

from __future__ import annotations

import sys
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.problems import BadInput, Failure
from drills.sealing import key_file_text, new_keys, private_keys, public_key_fault

TODAY = date(2026, 11, 27)
PAIR = new_keys()
# Published with the test vectors of the format, C2SP CCTV, age/internal/testkit.
PUBLISHED_PRIVATE = "AGE-SECRET-KEY-1EGTZVFFV20835NWYV6270LXYVK2VKNX2MMDKWYKLMGR48UAWX40Q2P2LM0"


def test_the_key_file_gives_the_private_key_back_and_says_what_it_is() -> None:
    text = key_file_text(PAIR, TODAY)
    assert private_keys(text.encode(), "k") == (PAIR.private,)
    assert text.startswith("# Private key for sealed practice digests, made 2026-11-27.")
    assert f"# public key: {PAIR.public}\n" in text


def test_every_pair_is_new_and_the_private_half_is_not_shown_by_accident() -> None:
    assert new_keys() != new_keys()
    assert PAIR.private not in repr(PAIR)


def test_a_key_file_may_hold_older_keys_below_the_new_one() -> None:
    older = new_keys()
    data = f"{key_file_text(PAIR, TODAY)}\r\n# old\r\n{older.private}\r\n".encode()
    assert private_keys(data, "k") == (PAIR.private, older.private)


def test_a_key_file_that_an_editor_saved_with_words_of_the_therapist_still_opens() -> None:
    data = f"\ufeff# Schlüssel für die Praxis\r\n{PAIR.private}\r\n".encode()
    assert private_keys(data, "k") == (PAIR.private,)


def test_a_published_private_key_is_one() -> None:
    assert private_keys(f"{PUBLISHED_PRIVATE}\n".encode(), "k") == (PUBLISHED_PRIVATE,)


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (PAIR.public.encode(), "k:1: This is the public key, which only seals."),
        (b"# a\n\nsomething else\n", "k:3: This is no private key."),
        (PAIR.private[:-1].encode(), "k:1: This private key is damaged."),
        (PAIR.private.lower().encode(), "k:1: This is no private key."),
        (b"", "k holds no key."),
        (b"# only words\n", "k holds no key."),
        (b"\xff\xfe\x00", "k is no key file."),
    ],
    ids=["public", "foreign", "damaged", "lower case", "empty", "comments", "bytes"],
)
def test_what_is_no_private_key_is_told_in_one_sentence(data: bytes, told: str) -> None:
    with pytest.raises(BadInput) as raised:
        private_keys(data, "k")
    assert str(raised.value).startswith(told)
    assert "\n" not in str(raised.value)
    assert PAIR.private[20:] not in str(raised.value)


@given(
    st.binary(max_size=300) | st.text(max_size=60).map(lambda text: text.encode("utf-8", "replace"))
)
def test_any_bytes_as_a_key_file_are_keys_or_one_sentence(data: bytes) -> None:
    try:
        keys = private_keys(data, "k")
    except BadInput as error:
        told = str(error)
    else:
        told = f"{len(keys)} keys"
    assert told.startswith(("k", "1 keys"))
    assert "\n" not in told


def test_a_public_key_has_no_fault() -> None:
    assert public_key_fault(PAIR.public) is None


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (PAIR.private, "This is the private key, which nobody else may see."),
        ("age1", "This public key is damaged, or of another kind."),
        (PAIR.public[:-1], "This public key is damaged, or of another kind."),
        (PAIR.public.replace("age1", "age1q"), "This public key is damaged, or of another kind."),
        ("ssh-ed25519 AAAA", "This is no public key."),
        ("\ud800", "This is no public key."),
        ("age1\ud800", "This public key is damaged, or of another kind."),
    ],
    ids=["private", "short", "cut", "longer", "of ssh", "half a character", "half at the end"],
)
def test_what_is_no_public_key_is_told(text: str, told: str) -> None:
    assert public_key_fault(text) == told


def test_one_letter_changed_is_always_noticed() -> None:
    """The checksum of the format finds any single change: BIP 173, section Checksum design."""
    for place in range(len("age1"), len(PAIR.public)):
        for letter in "qp":
            changed = PAIR.public[:place] + letter + PAIR.public[place + 1 :]
            assert (public_key_fault(changed) is None) == (changed == PAIR.public)


def test_without_the_library_a_plan_can_still_be_read_and_sealing_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "pyrage", None)
    assert public_key_fault("age1anything") is None
    with pytest.raises(Failure, match="pip install pyrage"):
        new_keys()
