"""Home practice for people with aphasia: plan, drills, records, weekly digest."""

__version__ = "0.1.0"
