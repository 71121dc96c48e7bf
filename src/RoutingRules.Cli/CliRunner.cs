using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using RoutingRules.Cli.Commands;
using RoutingRules.Cli.Input;
using RoutingRules.Cli.Output;

namespace RoutingRules.Cli;

/// <summary>Runs the tool: parses, runs one command, and turns everything that goes wrong into a message and an exit code.</summary>
internal static class CliRunner
{
    private const int LongestFault = 300;

    /// <summary>Runs a command line to its exit code. Never throws.</summary>
    /// <param name="arguments">The arguments.</param>
    /// <param name="console">The streams.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static int Run(string[] arguments, CliConsole console, CancellationToken cancellation = default)
    {
        try
        {
            using var waiting = new StoppableOutput(console.Output, cancellation);
            using var safe = console.IsTerminal ? new TerminalOutput(waiting) : null;
            return Parse(arguments, console with { Output = (Stream?)safe ?? waiting }, cancellation);
        }
        catch (UsageException fault)
        {
            return Fail(console, fault.Message, ExitCode.Usage);
        }
        catch (OperationCanceledException)
        {
            return Fail(console, "stopped on request; no file was written.", ExitCode.Undecided);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Fail(console, $"reading or writing failed: {fault.Message}", ExitCode.Usage);
        }
        catch (Exception fault)
        {
            var message = fault.Message.Length <= LongestFault ? fault.Message : fault.Message[..LongestFault] + "…";
            var what = $"{fault.GetType().Name}: {message}";
            return Fail(
                console,
                $"internal fault ({what}). This is a mistake of the tool, not of your document; please report it with the document.",
                ExitCode.Undecided
            );
        }
    }

    private static int Parse(string[] arguments, CliConsole console, CancellationToken cancellation)
    {
        var root = Root(console, cancellation, out var pluginOption);
        if (arguments.Length == 0)
        {
            ToolHelp.Write(root, console.Error);
            return ExitCode.Usage;
        }

        // Response files and directives are of no use here, and a file may well be called "@monday" or "[old]".
        var parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Action is ParseErrorAction or null)
        {
            var command = parsed.CommandResult.Command;
            if (command == root && parsed.UnmatchedTokens.Count > 0)
            {
                Say(console, $"there is no command '{parsed.UnmatchedTokens[0]}'; there are {string.Join(", ", root.Subcommands.Select(sub => sub.Name))}.");
            }
            else
            {
                foreach (var error in parsed.Errors)
                {
                    Say(console, error.Message);
                }
            }

            Say(console, $"see 'routing-rules {(command == root ? "" : command.Name + " ")}--help'.");
            return ExitCode.Usage;
        }

        // Commands hold the console they were made with, so they are made anew when plugins come in.
        if (parsed.Action is not ToolHelp && parsed.GetResult(pluginOption) is { Implicit: false })
        {
            root = Root(PluginChoice.Load(parsed.GetRequiredValue(pluginOption), console), cancellation, out _);
            parsed = root.Parse(arguments, new ParserConfiguration { ResponseFileTokenReplacer = null });
        }

        using var output = Texts.Over(console.Output);
        return parsed.Invoke(
            new InvocationConfiguration
            {
                Output = output,
                Error = console.Error,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            }
        );
    }

    private static RootCommand Root(CliConsole console, CancellationToken cancellation, out Option<string[]> pluginOption)
    {
        var root = new RootCommand("Checks, completes and explains the routing and patching of a live-sound rig.")
        {
            CheckCommand.Create(console, cancellation),
            AssignCommand.Create(console, cancellation),
            FixCommand.Create(console, cancellation),
            PinCommand.Create(console, cancellation),
            UnpinCommand.Create(console, cancellation),
            MarkCommand.Create(console, cancellation),
            TraceCommand.Create(console, cancellation),
            WhyCommand.Create(console, cancellation),
            CompareCommand.Create(console, cancellation),
            ChangeoverCommand.Create(console, cancellation),
            ImpactCommand.Create(console, cancellation),
            SheetCommand.Create(console, cancellation),
            ExportCommand.Create(console, cancellation),
            ImportCommand.Create(console, cancellation),
            RiderCommand.Create(console, cancellation),
            NewCommand.Create(console, cancellation),
            UpgradeCommand.Create(console, cancellation),
            RulesCommand.Create(console, cancellation),
            ProfilesCommand.Create(console, cancellation),
            PluginsCommand.Create(console),
            SchemasCommand.Create(console),
        };
        pluginOption = PluginChoice.AddTo(root);
        root.Directives.Clear();
        foreach (var option in root.Options)
        {
            if (option is HelpOption help)
            {
                help.Description = "Show what a command is for, its options and an example.";
                help.Action = new ToolHelp();
            }
            else if (option is VersionOption)
            {
                option.Description = "Show the version.";
            }
        }

        return root;
    }

    private static int Fail(CliConsole console, string message, int code)
    {
        Say(console, message);
        return code;
    }

    /// <summary>Says something on standard error, which may be gone as well.</summary>
    internal static void Say(CliConsole console, string message)
    {
        try
        {
            console.Error.Write($"routing-rules: {SafeText.Show(message)}\n");
        }
        catch (Exception fault) when (fault is IOException or OperationCanceledException)
        {
            // Nobody is left to tell.
        }
    }
}
