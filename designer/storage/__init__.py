"""Reading, migrating, repairing, durable writing, recovery and the library index."""
