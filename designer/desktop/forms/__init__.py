"""Short forms for the records of a drill, built from one table of fields a record."""
