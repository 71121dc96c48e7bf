namespace RoutingRules.Assignment.Strategies;

/// <summary>The strategies that every engine has, the default one first.</summary>
internal static class BuiltInStrategies
{
    public static AssignmentStrategy[] All => [new PortfolioStrategy(), new GreedyStrategy()];
}
