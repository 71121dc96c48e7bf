using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>What each loss does to a show, and what can be done about it.</summary>
/// <remarks>A value: the same show and options give the same answer.</remarks>
public sealed record ImpactAnswer
{
    /// <summary>
    /// Single losses, the worst first: by in-ear and main feeds lost, then feeds lost, feeds that lose some places, lines lost, lines that lose some sinks,
    /// feeds on their backup, silent outputs; then in the order of the rig.
    /// </summary>
    public required ValueList<LossImpact> Losses { get; init; }

    /// <summary>
    /// Pairs that silence a feed, a line or one of their places that neither loss alone does, ranked alike and with plans alike; empty unless asked for.
    /// </summary>
    public ValueList<LossImpact> Pairs { get; init; }

    /// <summary>How many more pairs there are than are listed.</summary>
    public int PairsOmitted { get; init; }

    /// <summary>For each protected feed that arrives somewhere the sets of failures that silence it, in document order.</summary>
    public ValueList<FailureSets> FailureSets { get; init; }

    /// <summary>Entries of feeds, and lines, that do not arrive as the show stands, so that no loss can be seen for them; in demand order.</summary>
    public ValueList<string> NotArriving { get; init; }

    /// <summary>How many moves plans could use.</summary>
    public required int Moves { get; init; }
}
