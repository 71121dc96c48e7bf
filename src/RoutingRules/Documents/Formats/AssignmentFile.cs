using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules.Documents.Formats;

/// <summary>What a configuration says about assignment, as written.</summary>
internal sealed record AssignmentFile
{
    public int? Spares { get; init; }

    public int? Headroom { get; init; }

    public double? LatencyMilliseconds { get; init; }

    public double? InEarLatencyMilliseconds { get; init; }

    public ValueList<AssignmentAim> Order { get; init; }

    public bool? KeepUnlisted { get; init; }

    public string? Strategy { get; init; }

    public long? Budget { get; init; }

    public static AssignmentFile Of(AssignmentConfig config) =>
        new()
        {
            Spares = config.Spares == 0 ? null : config.Spares,
            Headroom = config.Headroom == 0 ? null : config.Headroom,
            LatencyMilliseconds = config.LatencyMilliseconds,
            InEarLatencyMilliseconds = config.InEarLatencyMilliseconds,
            Order = config.Order,
            KeepUnlisted = config.KeepUnlisted ? true : null,
            Strategy = config.Strategy,
            Budget = config.Budget,
        };

    public AssignmentFile Over(AssignmentFile below) =>
        new()
        {
            Spares = Spares ?? below.Spares,
            Headroom = Headroom ?? below.Headroom,
            LatencyMilliseconds = LatencyMilliseconds ?? below.LatencyMilliseconds,
            InEarLatencyMilliseconds = InEarLatencyMilliseconds ?? below.InEarLatencyMilliseconds,
            Order = Order.IsEmpty ? below.Order : Order,
            KeepUnlisted = KeepUnlisted ?? below.KeepUnlisted,
            Strategy = Strategy ?? below.Strategy,
            Budget = Budget ?? below.Budget,
        };

    public AssignmentConfig ToConfig() =>
        new()
        {
            Spares = Spares ?? 0,
            Headroom = Headroom ?? 0,
            LatencyMilliseconds = LatencyMilliseconds,
            InEarLatencyMilliseconds = InEarLatencyMilliseconds,
            Order = Order,
            KeepUnlisted = KeepUnlisted ?? false,
            Strategy = Strategy,
            Budget = Budget,
        };
}
