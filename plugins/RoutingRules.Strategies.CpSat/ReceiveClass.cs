using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>A receive block, or several that are alike: which of them takes a run of slots then makes no difference.</summary>
internal sealed class ReceiveClass
{
    /// <summary>The first of the blocks.</summary>
    public required PartReceiveBlock Block { get; init; }

    /// <summary>True when others may be alike.</summary>
    public required bool IsPlain { get; init; }

    /// <summary>How many there are.</summary>
    public int Count { get; set; } = 1;

    /// <summary>What may be taken.</summary>
    public List<Take> Takes { get; } = [];
}
