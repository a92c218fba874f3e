"""Core. The frozen values and errors that every room shares, and the protocols of its edges.

May import the standard library only, and of it nothing that touches disk, clock, screen or chance.
Tested in tests/core.
"""
