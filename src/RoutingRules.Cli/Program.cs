using System.Runtime.InteropServices;
using RoutingRules.Cli;
using RoutingRules.Cli.Output;

// The first interrupt asks the work to stop; a second one ends the process, whatever it is at.
using var stop = new CancellationTokenSource();
using var input = Console.OpenStandardInput();
using var output = Console.OpenStandardOutput();
using var error = TextWriter.Synchronized(
    new StreamWriter(new StoppableOutput(Console.OpenStandardError(), stop.Token), Texts.Utf8) { AutoFlush = true, NewLine = "\n" }
);
var console = new CliConsole(input, output, error) { IsTerminal = !Console.IsOutputRedirected };
using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
return CliRunner.Run(args, console, stop.Token);

void Stop(PosixSignalContext context)
{
    context.Cancel = true;
    if (stop.IsCancellationRequested)
    {
        Environment.Exit(ExitCode.Undecided);
    }

    _ = Task.Delay(TimeSpan.FromSeconds(1))
        .ContinueWith(_ => CliRunner.Say(console, "still stopping; interrupt once more to end at once."), TaskScheduler.Default);
    stop.Cancel();
}
