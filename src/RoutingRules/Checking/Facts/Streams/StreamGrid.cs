using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Streams;

/// <summary>Block arithmetic of port groups: block b covers slots (b-1)·size+1 to b·size.</summary>
internal static class StreamGrid
{
    /// <summary>True when a run that lies in its group is whole blocks; slots beyond the last whole block belong to none.</summary>
    public static bool IsWhole(GroupNode group, int first, int width) => (first - 1) % group.BlockSize == 0 && width % group.BlockSize == 0;

    /// <summary>True when a run is exactly one block of its group.</summary>
    public static bool IsOne(GroupNode group, int first, int width) => width == group.BlockSize && IsWhole(group, first, width);

    /// <summary>True when a stream's sender resolves and is exactly one block.</summary>
    public static bool IsOnGrid(RuleContext context, StreamNode stream) =>
        stream.State == ConnectionState.Connected && IsOne(context.GroupOf(stream.From), context.NumberOf(stream.From), stream.Model.From.Width);
}
