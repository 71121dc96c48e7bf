using RoutingRules.Engine.Configuration;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Input;

/// <summary>Finds and loads the configuration of a run.</summary>
internal static class ConfigSetup
{
    public const string FileName = "routing-rules.json";

    /// <summary>The configuration that was asked for, else the nearest one to what is looked at, else the usual one.</summary>
    /// <param name="choice">What the command line says.</param>
    /// <param name="paths">Files and folders that are looked at: the search begins in the deepest folder that holds them all, and goes up.</param>
    /// <param name="console">Where a configuration may come from, and where the found one is named.</param>
    /// <param name="cancellation">Stops waiting for input.</param>
    /// <exception cref="UsageException">The configuration cannot be used.</exception>
    public static LoadedConfig Load(ConfigChoice choice, IReadOnlyList<string> paths, CliConsole console, CancellationToken cancellation)
    {
        if (choice is { Path: not null, IsNone: true })
        {
            throw new UsageException("--config and --no-config exclude each other; give one of them.");
        }

        var path = choice.IsNone ? null : choice.Path ?? Find(paths);
        if (path is null)
        {
            return LoadedConfig.Usual;
        }

        if (choice.Path is null && !choice.IsQuiet)
        {
            CliRunner.Say(console, $"using the configuration '{path}'; --no-config does without.");
        }

        var load =
            path.Length == 0
                ? throw new UsageException("the path after --config is empty; name a file.")
                : ConfigLoader.Load(path, name => InputDocument.Load(name, console, cancellation));
        return load.Config ?? throw Unusable(load.Problems.Select(problem => Line(problem.Path, problem.Finding)));
    }

    /// <summary>A complaint about a configuration, one line for each problem.</summary>
    public static UsageException Unusable(IEnumerable<string> problems) => new($"the configuration cannot be used.\n{string.Join('\n', problems)}");

    /// <summary>A problem of a file that is not a show, as one line with place and remedy.</summary>
    public static string Line(string path, Finding finding)
    {
        var place = finding.Line is { } line ? FormattableString.Invariant($":{line}:{finding.Column}") : "";
        return $"{path}{place}: {finding.Message} {finding.Remedy}".TrimEnd();
    }

    private static string? Find(IReadOnlyList<string> paths)
    {
        string? common = null;
        foreach (var path in paths)
        {
            var folder = FolderOf(path);
            common = common is null ? folder : Common(common, folder);
        }

        for (var folder = common; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            var candidate = Path.Join(folder, FileName);
            if (File.Exists(candidate))
            {
                var relative = Path.GetRelativePath(Environment.CurrentDirectory, candidate);
                return relative.StartsWith("..", StringComparison.Ordinal) ? candidate : relative;
            }
        }

        return null;
    }

    private static string FolderOf(string path)
    {
        if (path.Length == 0 || path == InputDocument.StandardInput || path.Contains('\0', StringComparison.Ordinal))
        {
            return Environment.CurrentDirectory;
        }

        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        return Directory.Exists(full) ? full : Path.GetDirectoryName(full) ?? full;
    }

    private static string? Common(string first, string second)
    {
        for (var folder = first; folder is not null; folder = Path.GetDirectoryName(folder))
        {
            var prefix = Path.EndsInDirectorySeparator(folder) ? folder : folder + Path.DirectorySeparatorChar;
            if (second == folder || second.StartsWith(prefix, StringComparison.Ordinal))
            {
                return folder;
            }
        }

        return null;
    }
}
