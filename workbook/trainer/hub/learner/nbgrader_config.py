"""What nbgrader must know in the server of a learner: who it is, and where work comes and goes."""

import os

c = get_config()  # type: ignore[name-defined]  # noqa: F821 - nbgrader puts it there

# nbgrader would ask the computer's account, which need not be the name somebody signed in with.
c.CourseDirectory.student_id = os.environ["JUPYTERHUB_USER"]
if folder := os.environ.get("WIRE_TO_WATER_EXCHANGE"):
    c.Exchange.root = folder
