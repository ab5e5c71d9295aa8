"""What a volume offers to files, what flawed sectors take of it, and whether a drive may keep in use with them."""

from benchsheaf.compute.filesystem.acceptance import (
    FlawListFigures,
    FlawRunFigures,
    RuleFigures,
    flaw_list_figures,
    lost_verdict,
)
from benchsheaf.compute.filesystem.layout import LayoutFigures, SlackFigures, layout_figures, slack_figures
from benchsheaf.compute.filesystem.volume import (
    LossFigures,
    VolumeFigures,
    flaw_sector,
    flawed_clusters,
    loss_figures,
    volume_figures,
)

__all__ = [
    "FlawListFigures",
    "FlawRunFigures",
    "LayoutFigures",
    "LossFigures",
    "RuleFigures",
    "SlackFigures",
    "VolumeFigures",
    "flaw_list_figures",
    "flaw_sector",
    "flawed_clusters",
    "layout_figures",
    "loss_figures",
    "lost_verdict",
    "slack_figures",
    "volume_figures",
]
