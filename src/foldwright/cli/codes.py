"""What a command gives back to the shell."""

GOOD = 0
BAD_INPUT = 2
INTERRUPTED = 130
