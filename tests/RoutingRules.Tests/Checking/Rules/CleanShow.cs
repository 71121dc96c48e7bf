using RoutingRules.Model;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>A show that is right by construction: a desk whose eight aux buses travel in two streams to some of three boxes.</summary>
public sealed record CleanShow
{
    /// <summary>The show.</summary>
    public required Show Show { get; init; }

    /// <summary>For each transmit slot, from 1 at position 0, the number of the aux bus in it.</summary>
    public required int[] AuxInSlot { get; init; }

    /// <summary>For each of the two blocks, the boxes that receive it, from 1.</summary>
    public required int[][] BoxesOfBlock { get; init; }

    /// <summary>A short form for failure messages.</summary>
    public override string ToString() =>
        $"aux {string.Join(",", AuxInSlot)}; boxes {string.Join(" | ", BoxesOfBlock.Select(boxes => string.Join(",", boxes)))}";
}
