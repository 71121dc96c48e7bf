using System.Globalization;

namespace RoutingRules.Cli.Output;

/// <summary>A file in the making: written beside its target under another name and renamed when it is whole, so that it is never half there.</summary>
internal sealed class OutputFile : IDisposable
{
    private const int Attempts = 100;

    private readonly string partPath;
    private readonly FileStream part;
    private bool isDone;

    private OutputFile(string target, string partPath, FileStream part)
    {
        Target = target;
        this.partPath = partPath;
        this.part = part;
        AppDomain.CurrentDomain.ProcessExit += TakeAway;
    }

    /// <summary>The full path of the target.</summary>
    public string Target { get; }

    /// <summary>Where to write.</summary>
    public Stream Content => part;

    /// <summary>Begins a file.</summary>
    /// <param name="path">The target; an existing file is replaced when <see cref="Commit"/> is reached.</param>
    /// <param name="inputs">Files that are read and must not be replaced.</param>
    /// <param name="mayReplace">False to refuse a target that is there already.</param>
    /// <exception cref="UsageException">The target cannot be written.</exception>
    public static OutputFile Begin(string path, IEnumerable<string> inputs, bool mayReplace = true)
    {
        var target = TargetOf(path);
        foreach (var input in inputs)
        {
            if (input.Length > 0 && TargetOf(input) == target)
            {
                throw new UsageException($"'{path}' is the input itself, which is never overwritten; name another file.");
            }
        }

        Refuse(path, target, mayReplace);
        for (var attempt = 1; ; attempt++)
        {
            var partPath = string.Create(CultureInfo.InvariantCulture, $"{target}.part-{attempt}");
            try
            {
                return new OutputFile(target, partPath, new FileStream(partPath, Opening(target)));
            }
            catch (IOException) when (File.Exists(partPath) && attempt < Attempts)
            {
                // Left over, or being written by another run.
            }
            catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
            {
                throw new UsageException($"'{path}' cannot be written: {fault.Message} Check the folder and who may write there.");
            }
        }
    }

    /// <summary>What takes the place of a file is nobody's business before it has the rights of that file.</summary>
    private static FileStreamOptions Opening(string target)
    {
        var opening = new FileStreamOptions
        {
            Mode = FileMode.CreateNew,
            Access = FileAccess.Write,
            Share = FileShare.None,
        };
        if (!OperatingSystem.IsWindows() && File.Exists(target))
        {
            opening.UnixCreateMode = FileRights.Private;
        }

        return opening;
    }

    private static string TargetOf(string path)
    {
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
        {
            throw new UsageException("the name of an output file is empty or holds a zero character; name a file.");
        }

        var full = Path.GetFullPath(path);
        try
        {
            return File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return full;
        }
    }

    private static void Refuse(string path, string target, bool mayReplace)
    {
        var folder = Path.GetDirectoryName(target);
        if (Directory.Exists(target) || Path.EndsInDirectorySeparator(path) || folder is null)
        {
            throw new UsageException($"'{path}' is a folder; name a file in it.");
        }

        if (!Directory.Exists(folder))
        {
            throw new UsageException($"there is no folder '{folder}' for '{path}'; make the folder first.");
        }

        // A rename would put an ordinary file in the place of a device.
        if (
            target.StartsWith("/dev/", StringComparison.Ordinal)
            || target.StartsWith("/proc/", StringComparison.Ordinal)
            || (!OperatingSystem.IsWindows() && FileRights.IsNoFile(target))
        )
        {
            throw new UsageException($"'{path}' is no place for a file; name a file, or leave the option away to use standard output.");
        }

        if (File.Exists(target))
        {
            if (!mayReplace)
            {
                throw new UsageException($"'{path}' is there already; name another file, or take that one away.");
            }

            if (File.GetAttributes(target).HasFlag(FileAttributes.ReadOnly))
            {
                throw new UsageException($"'{path}' is write-protected; name another file, or lift the protection.");
            }
        }
    }

    /// <summary>Puts the file in its place, with the rights of the one that it replaces.</summary>
    /// <exception cref="UsageException">That failed; the target is as it was.</exception>
    public void Commit()
    {
        try
        {
            part.Flush(flushToDisk: true);
            if (!OperatingSystem.IsWindows())
            {
                FileRights.Of(Target)?.GiveTo(part.SafeFileHandle);
            }

            part.Dispose();
            File.Move(partPath, Target, overwrite: true);
            End();
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"'{Target}' cannot be written: {fault.Message}");
        }
    }

    /// <summary>Takes the unfinished file away unless it was put in its place.</summary>
    public void Dispose()
    {
        if (isDone)
        {
            return;
        }

        End();
        try
        {
            part.Dispose();
        }
        catch (IOException)
        {
            // A full disk may refuse the last bytes; the file goes away in any case.
        }

        TakeAway(null, EventArgs.Empty);
    }

    private void End()
    {
        isDone = true;
        AppDomain.CurrentDomain.ProcessExit -= TakeAway;
    }

    /// <summary>Also asked for when the process is ended in the middle of its work.</summary>
    private void TakeAway(object? sender, EventArgs args)
    {
        try
        {
            File.Delete(partPath);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // What cannot be deleted keeps a name that tells what it is.
        }
    }
}
