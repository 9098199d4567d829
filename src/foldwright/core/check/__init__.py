"""Every finding in one list, and one shade through all rooms."""
