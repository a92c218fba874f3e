"""Bytes sealed to a public key, and opened again with the private one."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.problems import BadInput
from drills.sealing.library import age

# How a file of the age format begins, in bytes and as text for a mail.
_ARMOUR = b"-----BEGIN AGE ENCRYPTED FILE-----"
_BEGINNINGS = (b"age-encryption.org/", _ARMOUR)

# The library has one error for all; these words of it are held by the published test vectors.
_NO_MATCH = "No matching keys found"


def is_sealed(data: bytes) -> bool:
    return data.lstrip().startswith(_BEGINNINGS)


def seal(data: bytes, public_key: str) -> bytes:
    """`data`, for whoever has the private half of `public_key` (age-encryption.org/v1).

    Raises: Failure without the library.
    """
    library = age()
    sealed: bytes = library.encrypt(data, [library.x25519.Recipient.from_str(public_key)])
    return sealed


def unseal(data: bytes, private_keys: Sequence[str], where: str) -> bytes:
    """What was sealed to one of the keys.

    where: the file, for the sentence.   Raises: BadInput, and Failure without the library.
    """
    if not data.strip():
        raise BadInput(f"{where} is empty. Ask for it again.")
    if not is_sealed(data):
        raise BadInput(f"{where} is not a sealed file, or its beginning is damaged.")
    if data.lstrip().startswith(_ARMOUR):
        data = data.strip()  # a mail may add blank lines, and the library takes none
    library = age()
    identities = [library.x25519.Identity.from_str(each) for each in private_keys]
    try:
        opened: bytes = library.decrypt(data, identities)
    except library.DecryptError as error:
        if _NO_MATCH in str(error):
            raise BadInput(
                f"{where} does not open with this key. It is sealed to another one: "
                "compare the plan's public key with the one in the key file."
            ) from None
        raise BadInput(f"{where} is damaged. Ask for it again.") from None
    return opened
