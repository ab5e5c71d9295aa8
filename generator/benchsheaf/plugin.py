"""The edition handed over to MkDocs: one page at a time, published in one step or not at all."""

import logging
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Literal

from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, event_priority
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.structure.toc import get_toc
from mkdocs.utils import CountHandler

from benchsheaf import urls
from benchsheaf.exchange import Busy, Exchange, NotOurs, write_some
from benchsheaf.markup import escaped
from benchsheaf.pages.page import Page
from benchsheaf.site import Edition, edition, hindrance, judgement, mistaken_edition
from benchsheaf.surroundings import Own, Surroundings, overrides_folder
from benchsheaf.wording import as_text

log = logging.getLogger("mkdocs.plugins.benchsheaf")

# What the theme would copy into every site and no page of ours asks for.
# A sitemap carries the clock, and an error page absolute addresses: neither belongs on a stick.
UNUSED_OF_THE_THEME = (
    "assets/javascripts/lunr/",
    "assets/javascripts/workers/",
    "assets/images/favicon",
    "sitemap.xml",
)
AFTER_ALL_OTHERS = -100  # what other plugins write at the end must be there before the folders are exchanged
UNUSED_TEMPLATES = frozenset({"sitemap.xml", "404.html"})


class SheetPage(MkDocsPage):
    """A page of MkDocs that is written only while it is the active one, and forgotten after."""

    def __init__(self, sheet: Page, whole: Edition, file: File, config: MkDocsConfig) -> None:
        self._sheet = sheet
        self._edition = whole
        self._written: str | None = None
        self._column: str | None = None
        # The theme prints titles without escaping them.
        super().__init__(escaped(sheet.title), file, config)

    def read_source(self, config: MkDocsConfig) -> None:
        """There is no Markdown behind a sheet."""
        self.markdown = ""
        self.meta = {} if self.is_homepage else {"template": "sheet.html"}

    def render(self, config: MkDocsConfig, files: Files) -> None:
        """Nothing yet: `content` writes the page when the theme prints it."""
        self.toc = get_toc([])
        self.present_anchor_ids = set()
        self.links_to_anchors = {}

    @property
    def content(self) -> str:
        """The finished HTML of the sheet."""
        if not self.active:
            return ""
        if self._written is None:
            self._written = self._edition.html(self._sheet)
        return self._written

    @content.setter
    def content(self, value: str | None) -> None:
        self._written = None

    @property
    def active(self) -> bool:
        """Whether this is the page that is being printed."""
        return bool(getattr(self, "_active", False))

    @active.setter
    def active(self, value: bool) -> None:
        self._active = bool(value)
        self._written = self._column = None

    @property
    def brings(self) -> Sequence[str]:
        """The files that are best made right after it."""
        return self._sheet.brings

    @property
    def column(self) -> str:
        """The finished HTML of the list of sheets beside it."""
        if self._column is None:
            self._column = self._sheet.column()
        return self._column

    @property
    def own(self) -> Own:
        """What stands on this page and on no other."""
        return Own(
            url=self.url,
            title=self._sheet.title,
            column=self.column,
            content=self.content,
            edit_url=self.edit_url or "",
            canonical_url=self.canonical_url or "",
        )


class PluginConfig(Config):  # type: ignore[no-untyped-call]
    """Nothing to set: what the site says is in the data."""


class BenchsheafPlugin(BasePlugin[PluginConfig]):  # type: ignore[no-untyped-call]
    """Reads the data before MkDocs empties anything, and exchanges the folders after its own verdict."""

    def __init__(self) -> None:
        """Nothing is read before `on_config`."""
        self._serving = False
        self._edition: Edition | None = None
        self._brought: set[str] = set()
        self._exchange: Exchange | None = None
        self._around: Surroundings | None = None
        self._warnings = CountHandler()
        self._warnings.setLevel(logging.WARNING)

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Note whether somebody only looks."""
        self._serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Read, judge and compute everything; stop here if anything is wrong.

        Errors: PluginError, which MkDocs prints without a traceback.
        """
        if hindrance():
            raise PluginError(hindrance())
        if config.use_directory_urls:
            raise PluginError("Set `use_directory_urls: false` in mkdocs.yml: without it no page opens from a folder.")
        self._warnings = CountHandler()
        self._warnings.setLevel(logging.WARNING)
        logging.getLogger("mkdocs").addHandler(self._warnings)
        judged = judgement(Path(config.docs_dir))
        if judged.mistakes and not self._serving:
            raise PluginError(f"Nothing was published.\n\n{as_text(list(judged.mistakes))}")
        if judged.mistakes:
            log.warning("The data has mistakes; the page shows them.")
            self._edition = mistaken_edition(judged)
        else:
            judged.forget_texts()
            self._edition = edition(judged, _edit_base(config))
        config.theme.dirs.insert(0, str(overrides_folder()))
        config.theme.static_templates = set(config.theme.static_templates) - UNUSED_TEMPLATES
        if not self._serving:
            self._begin(config)
        return config

    def _begin(self, config: MkDocsConfig) -> None:
        published = Path(config.site_dir)
        self._exchange = Exchange(published, urls.INDEX_DATA)
        try:
            config.site_dir = str(self._exchange.begin())
        except Busy:
            raise PluginError(f"Another build of {published} is running. Nothing was changed.") from None
        except NotOurs:
            raise PluginError(
                f"{published} holds files that are not a built site. Nothing was changed: empty it, or name another."
            ) from None
        except OSError as error:
            raise PluginError(f"{published} cannot be written: {error.strerror}. Nothing was changed.") from None

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Take out what came from the data folder, and add the pages of the edition."""
        assert self._edition is not None
        self._brought.clear()
        for file in list(files):
            if file.src_dir == config.docs_dir or _unused(file):
                files.remove(file)
        for page in self._edition.pages:
            uri = page.address.removesuffix(".html") + ".md"
            home = page.address == urls.HOME
            inclusion = InclusionLevel.INCLUDED if home else InclusionLevel.NOT_IN_NAV
            file = File.generated(config, uri, content="", inclusion=inclusion)
            file.edit_uri = page.edit
            SheetPage(page, self._edition, file, config)
            files.append(file)
        return files

    def on_env(self, env: Any, *, config: MkDocsConfig, files: Files) -> Any:
        """Note the template that is the theme's page."""
        self._around = Surroundings(env.get_template("main.html").render)
        return env

    def on_page_context(self, context: Any, *, page: MkDocsPage, config: MkDocsConfig, nav: Any) -> Any:
        """Give a sheet to its template in pieces; the theme prints only the first page of the site itself."""
        if isinstance(page, SheetPage) and page.meta:
            assert self._around is not None
            context["pieces"] = self._around.whole(page.own, context)
        return context

    def on_post_page(self, output: str, *, page: MkDocsPage, config: MkDocsConfig) -> str:
        """Write the files that a page brings along; MkDocs writes the page itself."""
        assert self._edition is not None
        brought = page.brings if isinstance(page, SheetPage) else ()
        if brought:
            write_some(self._edition.files, brought, Path(config.site_dir))
            self._brought.update(brought)
        return output

    @event_priority(AFTER_ALL_OTHERS)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """The files that no page brought; the verdict: links followed, no warning in a strict build; then the exchange.

        Errors: PluginError, which MkDocs prints without a traceback.
        """
        assert self._edition is not None
        left = [address for address in self._edition.files if address not in self._brought]
        write_some(self._edition.files, left, Path(config.site_dir))
        lost = [f"{link.here} leads to {link.there}#{link.fragment}" for link in self._edition.astray()]
        if lost:
            words = "Links that lead nowhere (a mistake of the program, not of the data):"
            raise PluginError("\n".join([words, *lost]))
        if self._exchange is None:
            return
        if config.strict and self._warnings.get_counts():
            raise PluginError("There were warnings, and the build is strict. Nothing was published.")
        try:
            self._exchange.publish()
        except OSError as error:
            raise PluginError(
                f"The site could not be put in its place: {error.strerror}. It stays as it was."
            ) from None
        self._exchange = None

    def on_build_error(self, *, error: Exception) -> None:
        """Leave what is published as it is, and clear away the half of the new.

        Errors: PluginError in the place of an error of the system, a full disk for example, which has words of its own.
        """
        if self._exchange is not None:
            self._exchange.abandon()
            self._exchange = None
        if isinstance(error, OSError):
            named = f"{error.filename} cannot be used" if error.filename else "The site cannot be written"
            raise PluginError(f"{named}: {error.strerror}. Nothing was published.") from None


def _unused(file: File) -> bool:
    return file.src_uri.endswith(".map") or file.src_uri.startswith(UNUSED_OF_THE_THEME)


def _edit_base(config: MkDocsConfig) -> str | None:
    """Where a data file can be edited, as MkDocs itself would make it from `repo_url` and `edit_uri`."""
    if not config.repo_url or not config.edit_uri:
        return None
    return f"{config.repo_url.rstrip('/')}/{config.edit_uri.strip('/')}/"
