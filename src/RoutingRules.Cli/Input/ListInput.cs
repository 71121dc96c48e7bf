namespace RoutingRules.Cli.Input;

/// <summary>A list that a command reads beside a show.</summary>
internal static class ListInput
{
    /// <summary>The bytes of the list.</summary>
    /// <exception cref="UsageException">It cannot be read.</exception>
    public static ReadOnlyMemory<byte> Load(string path, CliConsole console, CancellationToken cancellation)
    {
        var loaded = InputDocument.Load(path, console, cancellation);
        return loaded.Problem is { } problem
            ? throw new UsageException($"the list cannot be read. {ConfigSetup.Line(InputDocument.NameOf(path), problem)}")
            : loaded.Utf8;
    }

    /// <summary>Refuses to read show and list from the same standard input.</summary>
    /// <exception cref="UsageException">Both are it.</exception>
    public static void RefuseBoth(string show, string? list)
    {
        if (show == InputDocument.StandardInput && list == InputDocument.StandardInput)
        {
            throw new UsageException("standard input holds the show or the list, not both; name a file for the other.");
        }
    }
}
