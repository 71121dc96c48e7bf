using System.Runtime.InteropServices;
using RoutingRules.Cli;

// The first interrupt asks the work to stop; a second one ends the process in the usual way.
using var stop = new CancellationTokenSource();
using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
using var input = Console.OpenStandardInput();
using var output = Console.OpenStandardOutput();
using var error = new StreamWriter(Console.OpenStandardError(), Texts.Utf8) { AutoFlush = true, NewLine = "\n" };
return CliRunner.Run(args, new CliConsole(input, output, error), stop.Token);

void Stop(PosixSignalContext context)
{
    if (!stop.IsCancellationRequested)
    {
        context.Cancel = true;
        stop.Cancel();
    }
}
