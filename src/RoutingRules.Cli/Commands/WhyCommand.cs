using System.CommandLine;
using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Cli.Input;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Names;

namespace RoutingRules.Cli.Commands;

/// <summary><c>why</c>: explains the place of a feed or a line.</summary>
internal static class WhyCommand
{
    public static Command Create(CliConsole console, CancellationToken cancellation)
    {
        var file = new Argument<string>("FILE") { Description = "The show, or - for standard input." }.NamesNoOption();
        var subject = new Argument<string>("FEED")
        {
            Description = "The id or the name of a feed or a line; main-l/2 is the second entry of a feed.",
        }.NamesNoOption();
        var not = new Option<string?>("--not") { HelpName = "POINT", Description = "Where would it go, and what else would change, if it must not be here?" };
        var at = new Option<string?>("--at") { HelpName = "POINT", Description = "What must move, or what stands against it, if it has to be here?" };
        var search = new SearchOptions("Do without a device, a link or a point; may be given several times.", "How much work to spend on each assignment.");
        var format = PageOptions.Format(
            ("text", "for people at a terminal"),
            ("json", "for programs, after why.schema.json"),
            ("markdown", "for people in a text that shows tables")
        );
        var names = new NamesOption(NameStyle.Both);
        var setup = new EngineOptions();
        var command = new ToolCommand(
            "why",
            "Explain where a feed or line is placed when the show is assigned: why there, why not elsewhere, what comes second. Nothing is written "
                + "to the show.",
            "routing-rules why saturday.show.json main-l\nWhy is the left main at its output, and what would be the next best?",
            "routing-rules why saturday.show.json main-l --at box-r/out/8\nWhat would have to move?"
        )
        {
            file,
            subject,
            not,
            at,
            search,
            format,
            names,
            setup,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(not) is not null && parsed.GetValue(at) is not null)
            {
                throw new UsageException("--not and --at cannot be asked together; ask twice.");
            }

            var path = parsed.GetRequiredValue(file);
            var (engine, _) = setup.Create(parsed, [path], console, cancellation);
            if (ShowInput.Read(path, console, engine, cancellation) is not { } show)
            {
                return ExitCode.Usage;
            }

            var resolved = engine.Resolve(show);
            var called = new CalledByName(resolved);
            var question = new WhyQuestion
            {
                Subject = called.Subject(parsed.GetRequiredValue(subject)),
                Not = parsed.GetValue(not) is { } without ? called.Points(without, "--not") : null,
                At = parsed.GetValue(at) is { } with ? called.Points(with, "--at") : null,
            };
            return Answer(engine, show, question, search.Of(engine, parsed), parsed.GetValue(format)!, names.Of(parsed, resolved), console, cancellation);
        });
        return command;
    }

    private static int Answer(
        RoutingEngine engine,
        Show show,
        WhyQuestion question,
        AssignmentOptions options,
        string format,
        PanelNames names,
        CliConsole console,
        CancellationToken cancellation
    )
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
                WhyReport.Write(answer, show, output, names);
            }
            else
            {
                WhyReport.WriteMarkdown(answer, show, output, names);
            }
        }

        var isPlaced =
            answer.Decisions.All(decision => decision.Unplaced.IsEmpty)
            && (answer.WhatIf is not { } what || (what.At is not null && what.Contradiction.IsEmpty && what.Lost.IsEmpty));
        return isPlaced ? ExitCode.Clean : ExitCode.Findings;
    }
}
