using RoutingRules.Documents;
using RoutingRules.Documents.Archives;

namespace RoutingRules.Cli.Input;

/// <summary>The documents behind one argument: one for a file, any number for an archive, a file of JSON lines and standard input.</summary>
internal static class ShowDocuments
{
    public const string LinesSuffix = ".jsonl";

    public static bool IsArchive(string path) => path.EndsWith(ShowArchive.Suffix, StringComparison.OrdinalIgnoreCase);

    /// <summary>The documents, each loaded when it is asked for.</summary>
    /// <param name="path">The argument.</param>
    /// <param name="console">Standard input, and where it is told which archives were not opened.</param>
    /// <param name="isQuiet">Do not tell.</param>
    /// <param name="cancellation">Stops waiting for input.</param>
    public static IEnumerable<DocumentFile> Of(string path, CliConsole console, bool isQuiet, CancellationToken cancellation) =>
        path == InputDocument.StandardInput ? Waiting(DocumentStream.Read(console.Input, InputDocument.NameOf(path), numbersOne: false), cancellation)
        : IsArchive(path) ? Archive(path, console, isQuiet)
        : path.EndsWith(LinesSuffix, StringComparison.OrdinalIgnoreCase) ? Waiting(Lines(path), cancellation)
        : [InputDocument.Load(path, console, cancellation) with { Path = path }];

    private static IEnumerable<DocumentFile> Archive(string path, CliConsole console, bool isQuiet)
    {
        using var archive = ShowArchive.Open(path);
        foreach (var document in archive.Read())
        {
            yield return document;
        }

        if (!archive.Nested.IsEmpty && !isQuiet)
        {
            CliRunner.Say(
                console,
                $"'{path}' holds archives that were not opened: {string.Join(", ", archive.Nested)}. Take them out, and check them by themselves."
            );
        }
    }

    private static IEnumerable<DocumentFile> Lines(string path)
    {
        var problem = Open(path, out var stream);
        using (stream)
        {
            foreach (var document in problem is null ? DocumentStream.Read(stream!, path) : [problem])
            {
                yield return document;
            }
        }
    }

    private static DocumentFile? Open(string path, out FileStream? stream)
    {
        stream = null;
        try
        {
            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            // Loading it as one document tells what is wrong.
            return DocumentFile.Load(path);
        }
    }

    /// <summary>The same, waiting where a wait can be interrupted: what nobody writes to blocks for ever.</summary>
    private static IEnumerable<DocumentFile> Waiting(IEnumerable<DocumentFile> documents, CancellationToken cancellation)
    {
        var each = documents.GetEnumerator();
        while (Task.Run(each.MoveNext, cancellation).WaitAsync(cancellation).GetAwaiter().GetResult())
        {
            yield return each.Current;
        }

        // Not when the wait was interrupted: the reading goes on in the background until the process ends.
        each.Dispose();
    }
}
