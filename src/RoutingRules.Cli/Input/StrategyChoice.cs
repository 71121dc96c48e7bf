using System.CommandLine;
using RoutingRules.Assignment;

namespace RoutingRules.Cli.Input;

/// <summary>The option <c>--strategy</c>, the same wherever something is assigned.</summary>
internal static class StrategyChoice
{
    public static Option<string?> Option() =>
        new("--strategy")
        {
            HelpName = "NAME",
            Description = "How to search: exact (the usual way), greedy (quick, proves nothing), or the name of one that a plugin brings.",
        };

    /// <summary>The strategy to use: the one asked for, else the configured one.</summary>
    /// <exception cref="UsageException">There is none of that name.</exception>
    public static string? Of(RoutingEngine engine, string? asked, AssignmentOptions usual)
    {
        var name = asked ?? usual.Strategy;
        if (name is not null && !engine.Strategies.Any(strategy => strategy.Name == name))
        {
            var asks = asked is null ? "the configuration asks for" : "--strategy asks for";
            throw new UsageException(
                $"{asks} the strategy '{name}', which does not exist; there are {string.Join(", ", engine.Strategies.Select(strategy => strategy.Name))}."
            );
        }

        return name;
    }
}
