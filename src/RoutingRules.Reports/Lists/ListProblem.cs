namespace RoutingRules.Reports.Lists;

/// <summary>What is wrong with a list, or what to mind about it.</summary>
public sealed record ListProblem
{
    /// <summary>The line of its text, from 1; line breaks inside quotes count. Null when it is about the whole.</summary>
    public int? Line { get; init; }

    /// <summary>The header of the column as the list writes it; null when it is about more than one cell.</summary>
    public string? Column { get; init; }

    /// <summary>What it is, as a sentence.</summary>
    public required string Message { get; init; }

    /// <summary>What to do, as a sentence.</summary>
    public required string Remedy { get; init; }

    /// <summary>Place, message and remedy on one line.</summary>
    public override string ToString()
    {
        var place = Line is null ? "" : FormattableString.Invariant($"line {Line}");
        place += Column is null ? "" : $"{(place.Length > 0 ? ", " : "")}column \"{Column}\"";
        return $"{place}{(place.Length > 0 ? ": " : "")}{Message} {Remedy}".TrimEnd();
    }
}
