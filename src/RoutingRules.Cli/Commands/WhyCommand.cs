using System.CommandLine;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Cli.Input;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Commands;

/// <summary><c>why</c>: explains the place of a feed or a line.</summary>
internal static class WhyCommand
{
    private const long MaxBudget = (1L << 53) - 1;

    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var subject = new Argument<string>("FEED") { Description = "The id of a feed or a line; main-l/2 is the second entry of a feed." }.NamesNoOption();
        var not = new Option<string?>("--not") { HelpName = "POINT", Description = "Where would it go, and what else would change, if it must not be here?" };
        var at = new Option<string?>("--at") { HelpName = "POINT", Description = "What must move, or what stands against it, if it has to be here?" };
        var spares = ToolOptions.Number("--spares", 0, 65_535, "Outputs to leave free in each group in which something new is placed.");
        var headroom = ToolOptions.Number("--headroom", 0, 65_535, "Streams to leave free at each device.");
        var budget = ToolOptions.Number("--budget", 1, MaxBudget, "How much work to spend on each assignment.");
        var without = new Option<string[]>("--without")
        {
            HelpName = "ID-OR-POINT",
            Description = "Do without a device, a link or a point; may be given several times.",
            DefaultValueFactory = _ => [],
        };
        var strategy = StrategyChoice.Option();
        var keepUnlisted = new Option<bool>("--keep-unlisted") { Description = "Let outputs go on carrying what no feed asks for, where they do so already." };
        var format = PageOptions.Format(
            ("text", "for people at a terminal"),
            ("json", "for programs, after why.schema.json"),
            ("markdown", "for people in a text that shows tables"));
        var config = ToolOptions.Config();
        var noConfig = ToolOptions.NoConfig();
        var profiles = ToolOptions.Profiles();
        var command = new ToolCommand(
            "why",
            "Explain where a feed or line is placed when the show is assigned: why there, why not elsewhere, what comes second. Nothing is written to the show.",
            "routing-rules why saturday.show.json main-l\nWhy is the left main at its output, and what would be the next best?",
            "routing-rules why saturday.show.json main-l --at box-r/out/8\nWhat would have to move?")
        {
            file, subject, not, at, spares, headroom, without, strategy, budget, keepUnlisted, format, config, noConfig, profiles,
        };
        command.SetAction(parsed =>
        {
            var question = new WhyQuestion
            {
                Subject = parsed.GetRequiredValue(subject),
                Not = Point("--not", parsed.GetValue(not)),
                At = Point("--at", parsed.GetValue(at)),
            };
            if (question is { Not: not null, At: not null })
            {
                throw new UsageException("--not and --at cannot be asked together; ask twice.");
            }

            var path = parsed.GetRequiredValue(file);
            var loaded = ConfigSetup.Load(new ConfigChoice(parsed.GetValue(config), parsed.GetValue(noConfig), false), [path], console, cancellation);
            var engine = EngineSetup.Create(parsed.GetRequiredValue(profiles), loaded, console);
            if (ShowInput.Read(path, console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var usual = engine.Config.ToAssignmentOptions();
            var options = usual with
            {
                Spares = (int)(parsed.GetValue(spares) ?? usual.Spares),
                Headroom = (int)(parsed.GetValue(headroom) ?? usual.Headroom),
                Strategy = StrategyChoice.Of(engine, parsed.GetValue(strategy), usual),
                Budget = parsed.GetValue(budget) ?? usual.Budget,
                KeepUnlisted = parsed.GetValue(keepUnlisted) || usual.KeepUnlisted,
                Without = ValueList.Create<string>(parsed.GetRequiredValue(without)),
            };
            return Answer(engine, show, question, options, parsed.GetValue(format)!, console, cancellation);
        });
        return command;
    }

    private static PointRange? Point(string option, string? address)
    {
        if (address is null)
        {
            return null;
        }

        return PointRange.TryParse(address, out var range, out var problem) ? range : throw new UsageException($"{option}: the point '{address}' {problem}.");
    }

    private static int Answer(RoutingEngine engine, Show show, WhyQuestion question, AssignmentOptions options, string format, CliConsole console, CancellationToken cancellation)
    {
        WhyAnswer answer;
        try
        {
            answer = engine.Why(show, question, options, cancellation);
        }
        catch (ArgumentException fault) when (fault.GetType() == typeof(ArgumentException))
        {
            throw new UsageException(fault.Message);
        }
        catch (UnsupportedAssignmentException fault)
        {
            throw new UsageException(fault.Message);
        }

        if (format == "json")
        {
            WhyJson.Write(answer, console.Output);
        }
        else
        {
            using var output = Texts.Over(console.Output);
            if (format == "text")
            {
                WhyReport.Write(answer, show, output);
            }
            else
            {
                WhyReport.WriteMarkdown(answer, show, output);
            }
        }

        var isPlaced = answer.Decisions.All(decision => decision.Unplaced.IsEmpty)
            && (answer.WhatIf is not { } what || (what.At is not null && what.Contradiction.IsEmpty && what.Lost.IsEmpty));
        return isPlaced ? ExitCode.Clean : ExitCode.Findings;
    }
}
