using System.CommandLine;
using RoutingRules.Assignment;
using RoutingRules.Cli.Input;
using RoutingRules.Model;

namespace RoutingRules.Cli.Commands;

/// <summary>The options that say how a show is assigned.</summary>
/// <param name="withoutText">What <c>--without</c> names.</param>
/// <param name="budgetText">What <c>--budget</c> is spent on.</param>
internal sealed class SearchOptions(string withoutText, string budgetText) : IOptionGroup
{
    private const long MaxBudget = (1L << 53) - 1;

    private readonly Option<long?> spares = ToolOptions.Number("--spares", 0, 65_535, "Outputs to leave free in each group in which something new is placed.");
    private readonly Option<long?> headroom = ToolOptions.Number("--headroom", 0, 65_535, "Streams to leave free at each device.");
    private readonly Option<string[]> without = new("--without")
    {
        HelpName = "ID-OR-POINT",
        Description = withoutText,
        DefaultValueFactory = _ => [],
    };
    private readonly Option<string?> strategy = StrategyChoice.Option();
    private readonly Option<long?> budget = ToolOptions.Number("--budget", 1, MaxBudget, budgetText);
    private readonly Option<bool> keepUnlisted = new("--keep-unlisted")
    {
        Description = "Let outputs go on carrying what no feed asks for, where they do so already.",
    };

    public IReadOnlyList<Option> Options => [spares, headroom, without, strategy, budget, keepUnlisted];

    /// <summary>What was asked for, and of the rest what the configuration says.</summary>
    /// <exception cref="UsageException">A strategy was asked for that does not exist.</exception>
    public AssignmentOptions Of(RoutingEngine engine, ParseResult parsed)
    {
        var usual = engine.Config.ToAssignmentOptions();
        return usual with
        {
            Spares = (int)(parsed.GetValue(spares) ?? usual.Spares),
            Headroom = (int)(parsed.GetValue(headroom) ?? usual.Headroom),
            Strategy = StrategyChoice.Of(engine, parsed.GetValue(strategy), usual),
            Budget = parsed.GetValue(budget) ?? usual.Budget,
            KeepUnlisted = parsed.GetValue(keepUnlisted) || usual.KeepUnlisted,
            Without = ValueList.Create<string>(parsed.GetRequiredValue(without)),
        };
    }
}
