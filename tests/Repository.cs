namespace RoutingRules.Tests;

/// <summary>The folder of the project, found by its solution: paths in compiled code are not those of the disk where a build is made reproducible.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string At(params string[] parts) => Path.Join([Root, .. parts]);

    private static string Find(string folder) => File.Exists(Path.Join(folder, "RoutingRules.sln")) ? folder : Find(Path.GetDirectoryName(folder)!);
}
