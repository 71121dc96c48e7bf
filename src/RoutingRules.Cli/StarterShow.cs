using RoutingRules.Reading;

namespace RoutingRules.Cli;

/// <summary>The show that <c>new</c> writes.</summary>
internal static class StarterShow
{
    /// <summary>The show as UTF-8.</summary>
    /// <exception cref="UsageException">The title holds what a document cannot.</exception>
    public static byte[] Create(string title)
    {
        using var resource = typeof(StarterShow).Assembly.GetManifestResourceStream("starter.show.json")!;
        var template = new byte[resource.Length];
        resource.ReadExactly(template);
        var show = ShowWriter.ToUtf8(ShowReader.Read(template).Value! with { Title = title });
        var read = ShowReader.Read(show);
        return !read.IsUsable ? throw new UsageException($"--title cannot be used: {read.Findings[0].Message}")
            : read.Value!.Title != title ? throw new UsageException("--title holds half a character, which no document can hold; type it again.")
            : show;
    }
}
