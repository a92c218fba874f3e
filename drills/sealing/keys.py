"""The therapist's pair of keys: one to show, which seals, and one to keep, which opens."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from drills.core.problems import BadInput, Failure
from drills.sealing.library import age

_PUBLIC = "age1"
_PRIVATE = "AGE-SECRET-KEY-1"


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyPair:
    """public: goes into plans.   private: stays with the therapist, and is never printed."""

    public: str
    private: str = field(repr=False)


def new_keys() -> KeyPair:
    """Keys that nobody had before.   Raises: Failure without the library."""
    made = age().x25519.Identity.generate()
    return KeyPair(public=str(made.to_public()), private=str(made))


def key_file_text(keys: KeyPair, made_on: date) -> str:
    """What the key file holds: the private key below comments, as any tool for age reads it."""
    return (
        f"# Private key for sealed practice digests, made {made_on.isoformat()}.\n"
        "# Whoever has this file can open them. Without it nobody can. Give it to nobody.\n"
        f"# public key: {keys.public}\n"
        f"{keys.private}\n"
    )


def private_keys(data: bytes, where: str) -> tuple[str, ...]:
    """The private keys in a key file, one a line; old ones may follow the new one.

    where: the file, for the sentence.   Raises: BadInput, and Failure without the library.
    """
    try:
        # Some editors put a mark before the text, and a comment may be in any language.
        lines = data.decode("utf-8-sig").splitlines()
    except UnicodeDecodeError:
        raise BadInput(f"{where} is no key file. {_WHICH}") from None
    found = []
    for number, line in enumerate(map(str.strip, lines), 1):
        if not line or line.startswith("#"):
            continue
        if line.startswith(_PUBLIC):
            raise BadInput(f"{where}:{number}: This is the public key, which only seals. {_WHICH}")
        if not line.startswith(_PRIVATE):
            raise BadInput(f"{where}:{number}: This is no private key. {_WHICH}")
        library = age()
        try:
            library.x25519.Identity.from_str(line)
        except library.IdentityError:
            raise BadInput(
                f"{where}:{number}: This private key is damaged. Take a copy of the file."
            ) from None
        found.append(line)
    if not found:
        raise BadInput(f"{where} holds no key. {_WHICH}")
    return tuple(found)


def public_key_fault(text: str) -> str | None:
    """What is wrong with a public key, in one sentence; None when nothing is.

    Where the library is missing nothing can be told, and practice has to go on: None.
    """
    if text.upper().startswith("AGE-SECRET-KEY-"):
        return "This is the private key, which nobody else may see."
    if not text.startswith(_PUBLIC):
        return "This is no public key."
    try:
        library = age()
    except Failure:
        return None
    try:
        library.x25519.Recipient.from_str(text)
    except (library.RecipientError, UnicodeEncodeError):
        return "This public key is damaged, or of another kind."
    return None


_WHICH = "Give the file that `drills plan key` wrote."
