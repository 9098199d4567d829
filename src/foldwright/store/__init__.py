"""Tables, migrations, and every save kept."""
