namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One network jack.</summary>
public sealed record SheetJack
{
    /// <summary>The jack.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The id of the network cable; null when the jack is free.</summary>
    public string? Link { get; init; }

    /// <summary>The jack at the other end; null when free.</summary>
    public SheetPlace? FarEnd { get; init; }

    /// <summary>The network; null when free.</summary>
    public string? Network { get; init; }

    /// <summary>Kind, length and speed of the cable; null when nothing was said.</summary>
    public string? Cable { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
