"""The kinds of mistake that a schema can find."""

from benchsheaf.mistakes import Code

# Numbers that Cerberus has for two of its errors.
MISSING = 0x02
UNKNOWN = 0x03

FIELD_01 = Code(
    id="FIELD-01",
    meaning="A field has a name that is not known there.",
    words="There is no field `{name}` here.{fields}",
    example={"name": "colour", "fields": " The fields are `kind`, `rated` and `ref`."},
)
FIELD_02 = Code(
    id="FIELD-02",
    meaning="A field that must be there is missing.",
    words="`{name}` is missing: {help} Add {sample}.",
    example={
        "name": "rated",
        "help": "The highest voltage that the maker allows.",
        "sample": "a line such as `rated: 16 V`",
    },
)
FIELD_03 = Code(
    id="FIELD-03",
    meaning="A value is not one of the words that the field knows.",
    words="One of these is wanted: {allowed}.",
    example={"allowed": "`slow` or `quick`"},
)
FIELD_04 = Code(
    id="FIELD-04",
    meaning="A field stands without another one that it needs.",
    words="`{name}` says nothing without `{needed}`. Add `{needed}`, or take `{name}` out.",
    example={"name": "peak", "needed": "peak_for"},
)
FIELD_05 = Code(
    id="FIELD-05",
    meaning="None of several fields is there, and one is needed.",
    words="One of {names} is missing here. Add the one that is true.",
    example={"names": "`rail`, `signal` or `key`"},
)
FIELD_06 = Code(
    id="FIELD-06",
    meaning="Nothing is written yet at a field that must be there.",
    words="Nothing is written here yet: {help} Write for example `{sample}`.",
    example={"help": "As it stands on the badge.", "sample": "name: Sketch-1"},
)
FIELD_07 = Code(
    id="FIELD-07",
    meaning="The line that begins a list or a group is missing, so that its lines stand in what is before it.",
    words="This belongs to `{list}`, and the line `{list}:` is missing above it.",
    example={"list": "parts"},
)
KIND_04 = Code(
    id="KIND-04",
    meaning="A list, a group of fields or a single value stands where another of them was wanted.",
    words="{wanted} is wanted here, not {got}.",
    example={"wanted": "A list (each item on a line that begins with `- `)", "got": "a single value"},
)
RANGE_01 = Code(
    id="RANGE-01",
    meaning="A number is too small.",
    words="At least {bound} is wanted.",
    example={"bound": "1 rpm"},
)
RANGE_02 = Code(
    id="RANGE-02",
    meaning="A number is too large.",
    words="At most {bound} is possible.",
    example={"bound": "100 %"},
)
RANGE_03 = Code(
    id="RANGE-03",
    meaning="A number must be above another one and is not.",
    words="`{name}` must be above `{other}`, which is `{bound}`.{hint}",
    example={"name": "high", "other": "low", "bound": "12.60 V", "hint": ""},
)
RANGE_04 = Code(
    id="RANGE-04",
    meaning="A list has too few items.",
    words="This list needs {bound} items at least.",
    example={"bound": "2"},
)
