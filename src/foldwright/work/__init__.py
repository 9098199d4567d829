"""Use cases: one function per thing a person does."""
