"""Sealing: files that one key closes and only its private half opens, in the age format.

Holds the keys, what closes and opens, and what is wrong with either in one sentence. May import
core; the only pyrage, loaded late. Reads and writes no file. Tested by tests/sealing.
"""

from drills.sealing.keys import KeyPair, key_file_text, new_keys, private_keys, public_key_fault
from drills.sealing.sealed import is_sealed, seal, unseal

__all__ = [
    "KeyPair",
    "is_sealed",
    "key_file_text",
    "new_keys",
    "private_keys",
    "public_key_fault",
    "seal",
    "unseal",
]
