"""A hub for a class: everybody works in a browser, on one Linux computer of the class.

JupyterHub signs people in by the accounts of that computer and starts a server of their own for
each. Learners are its group `pump-class`, trainers its group `pump-trainers`. Everybody must be able
to read this project and its `.venv`. As root, in a folder where the hub may keep its own files:

    jupyterhub --config jupyterhub_config.py

A learner's page has the workbook's settings and nbgrader's list of what is set. A trainer's page
has all of nbgrader. Work goes out and comes in through the folder named in the variable
WIRE_TO_WATER_EXCHANGE, or else through nbgrader's usual one.

This hub listens to its own computer alone. How to open one to a network, and what it protects from
whom, is said in JupyterHub's documentation; read "Security Overview" there first. To try the hub at
a desk, without accounts, where anybody can be anybody:

    jupyterhub --config jupyterhub_config.py --JupyterHub.authenticator_class=dummy \
        --JupyterHub.spawner_class=simple --Authenticator.admin_users=trainer
"""

import os
import sys
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[3]
SETTINGS = PROJECT / "workbook" / "start" / "settings"
LEARNER = Path(__file__).resolve().parent / "learner"


def settings_for(*folders):
    """The value of a variable for one person's server: a learner gets these settings."""
    listed = os.pathsep.join(map(str, folders))
    return lambda spawner: "" if spawner.user.admin else listed


c = get_config()  # type: ignore[name-defined]  # noqa: F821 - JupyterHub puts it there

c.JupyterHub.bind_url = "http://127.0.0.1:8000"
c.LocalAuthenticator.allowed_groups = {"pump-class", "pump-trainers"}
c.PAMAuthenticator.admin_groups = {"pump-trainers"}

c.Spawner.environment = {
    "JUPYTER_CONFIG_PATH": settings_for(LEARNER, SETTINGS),
    "JUPYTER_PATH": settings_for(SETTINGS),
    "PYTHONPATH": str(PROJECT),
    "PATH": os.pathsep.join([str(Path(sys.executable).parent), os.environ["PATH"]]),
}
c.Spawner.env_keep.append("WIRE_TO_WATER_EXCHANGE")
# Seconds. A server nobody uses makes room for others; what was answered is in files, and stays.
c.Spawner.args = ["--ServerApp.shutdown_no_activity_timeout=3600"]
