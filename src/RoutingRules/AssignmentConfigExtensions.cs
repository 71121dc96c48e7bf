using RoutingRules.Assignment;
using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules;

/// <summary>Turns what a configuration says about assignment into options.</summary>
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
            KeepUnlisted = config.KeepUnlisted,
            Strategy = config.Strategy,
            Budget = config.Budget ?? usual.Budget,
            Order = config.Order.Select(Level).ToValueList(),
        };
    }

    private static ObjectiveLevel Level(AssignmentAim aim) => aim switch
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
