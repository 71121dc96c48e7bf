using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Reading;
using RoutingRules.Reporting;

namespace RoutingRules.Cli.Commands;

/// <summary><c>rules</c>: what is checked.</summary>
internal static class RulesCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var id = new Argument<string?>("ID") { Description = "A rule's id or name, to read all about it.", Arity = ArgumentArity.ZeroOrOne }.NamesNoOption();
        var command = new ToolCommand(
            "rules",
            "List the rules, or tell all about one: what it checks, why that matters, what to do, and where it comes from.",
            "routing-rules rules\nLists every rule.",
            "routing-rules rules RR1001\nTells all about one.")
        {
            id,
        };
        command.SetAction(parsed =>
        {
            var rules = ReadingRules.All
                .Concat(EngineSetup.Create([], null, console, cancellation).Rules.Select(rule => rule.Descriptor))
                .OrderBy(rule => rule.Id, StringComparer.Ordinal)
                .ToList();
            using var output = Texts.Over(console.Output);
            if (parsed.GetValue(id) is not { } wanted)
            {
                RuleReport.WriteList(rules, output);
                return ExitCode.Clean;
            }

            var rule = rules.Find(rule => string.Equals(rule.Id, wanted, StringComparison.OrdinalIgnoreCase) || rule.Name == wanted);
            RuleReport.Write(rule ?? throw new UsageException($"there is no rule '{wanted}'; 'routing-rules rules' lists them all."), output);
            return ExitCode.Clean;
        });
        return command;
    }
}
