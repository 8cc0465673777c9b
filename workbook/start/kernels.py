"""Which kernels there are: those in Jupyter's own folders."""

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_core.paths import jupyter_path
from traitlets import default

__all__ = ["Kernels"]


class Kernels(KernelSpecManager):
    """Kernels, without those in IPython's own folder, where nothing puts them any more.

    To learn where that folder is all of IPython would be loaded, a tenth of the server's start.
    """

    @default("kernel_dirs")
    def _folders(self) -> list[str]:
        return jupyter_path("kernels")
