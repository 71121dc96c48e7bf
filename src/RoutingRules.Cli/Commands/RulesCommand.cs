using System.CommandLine;
using RoutingRules.Cli.Input;
using RoutingRules.Engine.Configuration;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>rules</c>: what is checked.</summary>
internal static class RulesCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var id = new Argument<string?>("ID") { Description = "A rule's id or name, to read all about it.", Arity = ArgumentArity.ZeroOrOne }.NamesNoOption();
        var effective = new Option<bool>("--effective") { Description = "With ID: which values count for the rule, and which file and line set each." };
        var markdown = new Option<bool>("--markdown") { Description = "Write the whole catalogue as one page of Markdown." };
        var format = new Option<string?>("--format") { HelpName = "FORMAT", Description = "How the rules are written: text (usually), json or markdown." };
        format.AcceptOnlyFromAmong("text", "json", "markdown");
        var config = ToolOptions.Config();
        var noConfig = ToolOptions.NoConfig();
        var command = new ToolCommand(
            "rules",
            "List the rules, or tell all about one: what it checks, why that matters, what to do, and where it comes from.",
            "routing-rules rules\nLists every rule.",
            "routing-rules rules RR1001\nTells all about one.",
            "routing-rules rules RR2003 --effective --config crew.json\nTells what counts for it under a configuration, and why."
        )
        {
            id,
            effective,
            markdown,
            format,
            config,
            noConfig,
        };
        command.SetAction(parsed =>
        {
            var wanted = parsed.GetValue(id);
            var isEffective = parsed.GetValue(effective);
            var choice = new ConfigChoice(parsed.GetValue(config), parsed.GetValue(noConfig), IsQuiet: true);
            if (!isEffective && (choice.Path is not null || choice.IsNone))
            {
                throw new UsageException("a configuration changes what counts, not what a rule is; add --effective, or leave the configuration away.");
            }

            var isJson = parsed.GetValue(format) == "json";
            var isMarkdown = parsed.GetValue(markdown) || parsed.GetValue(format) == "markdown";
            if ((isEffective && wanted is null) || (isMarkdown && wanted is not null))
            {
                throw new UsageException("--effective is about one rule, and needs its id; --markdown is about all, and takes none.");
            }

            if (isJson && (isEffective || isMarkdown))
            {
                throw new UsageException("--format json tells what rules are; leave --effective and --markdown away.");
            }

            var loaded = isEffective ? ConfigSetup.Load(choice, [Environment.CurrentDirectory], console, cancellation) : LoadedConfig.Usual;
            var rules = EngineSetup.Create([], loaded, console).Catalogue;
            using var output = Texts.Over(console.Output);
            if (wanted is null)
            {
                if (isMarkdown)
                {
                    output.Write(RuleCatalogue.Markdown(rules));
                }
                else if (isJson)
                {
                    output.Write(RuleJson.Write(rules));
                }
                else
                {
                    RuleReport.WriteList(rules, output);
                }

                return ExitCode.Clean;
            }

            var rule =
                rules.FirstOrDefault(rule => string.Equals(rule.Id, wanted, StringComparison.OrdinalIgnoreCase) || rule.Name == wanted)
                ?? throw new UsageException($"there is no rule '{wanted}'; 'routing-rules rules' lists them all.");
            if (isEffective)
            {
                RuleReport.WriteEffective(rule, loaded, output);
            }
            else if (isJson)
            {
                output.Write(RuleJson.Write([rule]));
            }
            else
            {
                RuleReport.Write(rule, output);
            }

            return ExitCode.Clean;
        });
        return command;
    }
}
