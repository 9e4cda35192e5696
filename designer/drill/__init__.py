"""What a drill is: frozen records, settings laid one over another, and edits that return a new drill."""
