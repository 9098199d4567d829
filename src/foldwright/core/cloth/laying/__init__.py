"""Cut lengths laid out on rolls: in the repeat, past flaws, one after another."""
