namespace RoutingRules.Reports.Lists;

/// <summary>How a cell says the value of a member.</summary>
internal enum CellKind
{
    /// <summary>A text as it stands.</summary>
    Text,

    /// <summary>A word of the format, in any case.</summary>
    Word,

    /// <summary>An id or a range.</summary>
    Name,

    /// <summary>A whole number.</summary>
    Number,

    /// <summary>A number with a point where needed.</summary>
    Decimal,

    /// <summary>Yes or no.</summary>
    Flag,

    /// <summary>Ranges.</summary>
    Ranges,

    /// <summary>The destinations of a feed.</summary>
    Destinations,

    /// <summary>Where a line enters.</summary>
    Origin,

    /// <summary>Feeds to stay apart from.</summary>
    Separations,
}
