namespace RoutingRules.Schema.Tests;

/// <summary>Where files of the repository are.</summary>
internal static class Repository
{
    /// <summary>The folder of the published schemas.</summary>
    public static string Schemas { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "RoutingRules.sln")))
            {
                return Path.Combine(folder.FullName, "schema");
            }
        }

        throw new DirectoryNotFoundException("The folder with the solution is above that of the tests.");
    }
}
