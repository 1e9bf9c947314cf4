namespace Evenstep.Service.Contract.Fields;

/// <summary>Everything that can be wrong with a body; in JSON lower case with hyphens, such as <c>unknown-field</c>.</summary>
internal enum FaultCode
{
    UnknownField,
    Missing,
    WrongType,
    OutOfRange,
    NotOneOf,
    TooManyDecimals,
    TooShort,
    TooLong,
    TooFew,
    TooMany,
    Duplicate,
    InvalidText,

    /// <summary>The lower end of a range is not far enough below the upper.</summary>
    EmptyRange,
    UnknownItem,
    UnknownTelescope,
    UnknownCatalogue,

    /// <summary>Something that stays as it is was to change.</summary>
    Unchangeable,

    /// <summary>A line that is no JSON.</summary>
    NotJson,
}
