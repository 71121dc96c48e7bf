using RoutingRules.Assignment;

namespace RoutingRules.Cli.Input;

/// <summary>How commands assign that have no options of their own for it.</summary>
internal static class AssignmentSetup
{
    /// <summary>The options of the configuration.</summary>
    /// <exception cref="UsageException">It asks for a strategy that does not exist.</exception>
    public static AssignmentOptions Configured(RoutingEngine engine)
    {
        var usual = engine.Config.ToAssignmentOptions();
        return usual with { Strategy = StrategyChoice.Of(engine, null, usual) };
    }
}
