using RoutingRules.Documents;

namespace RoutingRules.Cli.Input;

/// <summary>Fetches documents from files and standard input, never more than the readers take.</summary>
internal static class InputDocument
{
    /// <summary>The argument that means standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>What an argument is called in reports.</summary>
    public static string NameOf(string path) => path == StandardInput ? "standard input" : path;

    /// <summary>Loads a file, a pipe or standard input.</summary>
    public static DocumentFile Load(string path, CliConsole console, CancellationToken cancellation)
    {
        if (path.Length == 0)
        {
            throw new UsageException("a path is empty; name a file.");
        }

        // A pipe that nobody writes to blocks for ever, and only a wait can be interrupted.
        var loading = Task.Run(
            () => path == StandardInput ? DocumentFile.Load(console.Input, NameOf(path)) : OpenPipe(path) ?? DocumentFile.Load(path),
            cancellation
        );
        return loading.WaitAsync(cancellation).GetAwaiter().GetResult();
    }

    /// <summary>Named pipes, such as a shell makes for the output of a command, have no length to ask for; null for ordinary files.</summary>
    private static DocumentFile? OpenPipe(string path)
    {
        try
        {
            if (Directory.Exists(path))
            {
                return null;
            }

            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
            return stream.CanSeek ? null : DocumentFile.Load(stream, path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            return null;
        }
    }
}
