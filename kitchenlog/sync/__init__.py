"""What phones speak: join, push, pull."""
