"""What our command says of a house, read from its JSON."""
import json
import os
import subprocess
import tempfile


def forecast(command, house):
    """Our forecast of a house, with its rooms by tag of the outlet."""
    with tempfile.TemporaryDirectory() as folder:
        paper, survey = os.path.join(folder, "house.toml"), os.path.join(folder, "house.legwork")
        with open(paper, "w") as file:
            file.write(house.sheet())
        run = lambda *what: subprocess.run([command, *what], check=True, capture_output=True).stdout
        try:
            run("sheet", paper, survey)
            said = json.loads(run("--json", "forecast", survey))
        except subprocess.CalledProcessError as failed:
            raise SystemExit(f"{house.name}: {failed.stderr.decode()}\n{house.sheet()}") from failed
    said["by_tag"] = {room["outlet"]["tag"]: room for room in said["rooms"]}
    return said
