using RoutingRules.Assignment;
using RoutingRules.Checking;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules;

/// <summary>Turns what a configuration says into options of assignments.</summary>
public static class AssignmentConfigExtensions
{
    /// <summary>The options; what the configuration does not say is as usual.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="config"/> is null.</exception>
    public static AssignmentOptions ToOptions(this AssignmentConfig config)
    {
        ArgumentNullException.ThrowIfNull(config);
        var usual = new AssignmentOptions();
        return usual with
        {
            Spares = config.Spares,
            Headroom = config.Headroom,
            LatencyMilliseconds = config.LatencyMilliseconds,
            InEarLatencyMilliseconds = config.InEarLatencyMilliseconds,
            KeepUnlisted = config.KeepUnlisted,
            Strategy = config.Strategy,
            Budget = config.Budget ?? usual.Budget,
            Order = config.Order.Select(Level).ToValueList(),
        };
    }

    /// <summary>The options; links may be filled as far as the rule about reservations lets them, whether or not that rule runs.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="config"/> is null.</exception>
    public static AssignmentOptions ToAssignmentOptions(this EngineConfig config)
    {
        ArgumentNullException.ThrowIfNull(config);
        var options = config.Assignment.ToOptions();
        return options with { LinkPercent = RuleSelection.Value(config, new LinkReservationExceeded().Descriptor, LinkReservationExceeded.MaximumPercent) };
    }

    private static ObjectiveLevel Level(AssignmentAim aim) =>
        aim switch
        {
            AssignmentAim.Sets => ObjectiveLevel.Sets,
            AssignmentAim.Groups => ObjectiveLevel.Groups,
            AssignmentAim.Distance => ObjectiveLevel.Distance,
            AssignmentAim.Order => ObjectiveLevel.Order,
            AssignmentAim.Rewritten => ObjectiveLevel.Rewritten,
            AssignmentAim.TransmitBlocks => ObjectiveLevel.TransmitBlocks,
            AssignmentAim.ReceiveBlocks => ObjectiveLevel.ReceiveBlocks,
            AssignmentAim.Numbers => ObjectiveLevel.Numbers,
            _ => throw new ArgumentOutOfRangeException(nameof(aim), aim, "Not an aim."),
        };
}
