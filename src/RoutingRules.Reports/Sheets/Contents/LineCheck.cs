using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One line, or one half of a pair, to check.</summary>
public sealed record LineCheck
{
    /// <summary>The line.</summary>
    public required SheetLineInfo Line { get; init; }

    /// <summary>Where it enters: one place, or several when a split feeds several boxes; empty when it is not placed yet.</summary>
    public ValueList<SheetPlace> Enters { get; init; }

    /// <summary>The ways of the cables between where it enters and its channels, in the order of the signal, each once.</summary>
    public ValueList<string> Ways { get; init; }

    /// <summary>The nearest free input on the same device that would do instead; null when there is none.</summary>
    public SheetPlace? Spare { get; init; }

    /// <summary>Phantom power where it enters; null when it is not placed yet or enters at no input.</summary>
    public SheetPhantom? Phantom { get; init; }

    /// <summary>The channels it shall reach, in the order of the document.</summary>
    public ValueList<LineTick> Ticks { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
