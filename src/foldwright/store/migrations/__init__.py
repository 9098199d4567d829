"""Steps that bring an older book up to date, run by the migration tool."""
