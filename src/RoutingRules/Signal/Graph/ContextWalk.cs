using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Signal.Graph;

/// <summary>Walks through a rule's context.</summary>
internal readonly record struct ContextWalk(RuleContext Context) : ISignalWalk
{
    /// <inheritdoc/>
    public DeviceNode DeviceOf(PointIndex point) => Context.DeviceOf(point);

    /// <inheritdoc/>
    public GroupNode GroupOf(PointIndex point) => Context.GroupOf(point);

    /// <inheritdoc/>
    public HopKind Via(PointIndex point) => Context.Via(point);

    /// <inheritdoc/>
    public ReadOnlySpan<int> Fed(PointIndex point) => Context.Fed(point);
}
