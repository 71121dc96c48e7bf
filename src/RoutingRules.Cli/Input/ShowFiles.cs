using RoutingRules.Documents.Archives;

namespace RoutingRules.Cli.Input;

/// <summary>Turns the paths of a command line into files: files as they are, folders by their shows.</summary>
internal static class ShowFiles
{
    /// <summary>The files, paths in the order given, the shows of a folder and its subfolders in ordinal order of their paths.</summary>
    /// <exception cref="UsageException">A folder holds no show or cannot be listed, or standard input is named twice.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static IReadOnlyList<string> Expand(IReadOnlyList<string> paths, CancellationToken cancellation)
    {
        if (paths.Count(path => path == InputDocument.StandardInput) > 1)
        {
            throw new UsageException("standard input (-) is named twice, and it can be read once only; name it once.");
        }

        var files = new List<string>();
        foreach (var path in paths)
        {
            if (path.Length == 0 || path == InputDocument.StandardInput || !Directory.Exists(path))
            {
                files.Add(path);
                continue;
            }

            var found = Shows(path, cancellation, out var archive);
            if (found.Count == 0)
            {
                throw new UsageException(
                    $"the folder '{path}' holds no file named *{ShowArchive.ShowSuffix}; name the file itself, or another folder."
                        + (archive is null ? "" : $" Archives in a folder are not opened; name those that are to be checked, such as '{archive}'.")
                );
            }

            files.AddRange(found);
        }

        return files;
    }

    private static List<string> Shows(string folder, CancellationToken cancellation, out string? archive)
    {
        archive = null;
        var found = new List<string>();
        var pending = new Stack<string>([folder]);
        while (pending.TryPop(out var next))
        {
            cancellation.ThrowIfCancellationRequested();
            try
            {
                foreach (var entry in new DirectoryInfo(next).EnumerateFileSystemInfos())
                {
                    var path = Path.Join(next, entry.Name);

                    // A link to a folder may lead back up; a file named twice is checked twice, a ring would never end.
                    if (entry is DirectoryInfo && entry.LinkTarget is null)
                    {
                        pending.Push(path);
                    }
                    else if (entry is FileInfo && entry.Name.EndsWith(ShowArchive.ShowSuffix, StringComparison.Ordinal))
                    {
                        found.Add(path);
                    }
                    else if (entry is FileInfo && ShowDocuments.IsArchive(path) && (archive is null || string.CompareOrdinal(path, archive) < 0))
                    {
                        archive = path;
                    }
                }
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw new UsageException($"the folder '{next}' cannot be listed: {fault.Message} Check who may read it.");
            }
        }

        found.Sort(StringComparer.Ordinal);
        return found;
    }
}
