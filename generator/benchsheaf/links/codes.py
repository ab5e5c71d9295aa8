"""The kinds of mistake that names and pointers can make."""

from benchsheaf.mistakes import Code

POINTERS = ("points at it", "point at it")

ID_01 = Code(
    id="ID-01",
    meaning="A name that must be single stands twice.",
    words="This name stands already at {first}. Every {family} needs a name of its own: change one of the two.",
    example={"first": "machines/sketch-1/boards.yml:12", "family": "part of a file"},
)
ID_02 = Code(
    id="ID-02",
    meaning="Two things have the same name on their plates.",
    words="{first} has the same name, and nobody could tell the two apart on a page. Change one of them.",
    example={"first": "machines/sketch-1/identity.yml:3"},
)
ID_03 = Code(
    id="ID-03",
    meaning="A list names the same thing twice.",
    words="`{name}` stands in this list already ({first}). Once is enough: take one out, or name another.",
    example={"name": "N41", "first": "machines/sketch-1/memory.yml:9"},
)
ID_04 = Code(
    id="ID-04",
    meaning="Two shared things of different kinds have the same short name.",
    words="{first} has the same short name, and `{slug}/C1` could be a part of either. Rename one of the two files.",
    example={"first": "machines/_parts/supplies/sp-96.yml", "slug": "sp-96"},
)
LINK_01 = Code(
    id="LINK-01",
    meaning="A pointer leads to a name that is not there.",
    words="There is no {family} of that name in {where}.{known}",
    example={"family": "outcome", "where": "`to-ground`", "known": " There are `usual` and `plus-12-low`."},
    shares=POINTERS,
)
LINK_02 = Code(
    id="LINK-02",
    meaning="A pointer leads to a file that is not there.",
    words="There is no {kind} of that name. It would stand in {file}.",
    example={"kind": "drive", "file": "machines/_parts/drives/ov-hd41.yml"},
    shares=POINTERS,
)
LINK_03 = Code(
    id="LINK-03",
    meaning="Something shared asks for a rail, a removal or a stage that the machine which holds it does not have.",
    words="`{slug}` {asks} `{name}` ({at}), and {lack}. Change one of the two.",
    example={
        "slug": "ov-hd14",
        "asks": "uses the rail",
        "name": "+24 V",
        "at": "machines/_parts/drives/ov-hd14.yml:14",
        "lack": "this machine has no such rail",
    },
    shares=POINTERS,
)
LINK_04 = Code(
    id="LINK-04",
    meaning="A pointer leads to a part of something that the machine does not hold.",
    words="This machine holds no `{slug}`. It holds {held}.",
    example={"slug": "sp-130", "held": "`ov-hd14` and `sp-96`"},
    shares=POINTERS,
)
LINK_05 = Code(
    id="LINK-05",
    meaning="Pointers go round in a circle.",
    words="This goes round in a circle: {circle}. One of these lines must name another, or go.",
    example={"circle": "board → supply-alone → board"},
)
