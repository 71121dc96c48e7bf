using System.Text.RegularExpressions;

namespace RoutingRules.Architecture.Tests;

public partial class NamespaceTests
{
    [Fact]
    public void A_namespace_is_the_folder_it_stands_in()
    {
        var files = SourceFiles.CSharp("src").Where(path => !path.EndsWith("/Program.cs", StringComparison.Ordinal)).ToList();

        Assert.InRange(files.Count, 500, int.MaxValue);
        Assert.DoesNotContain(files, path => Namespace().Match(SourceFiles.Text(path)).Groups[1].Value != Folder(path));
    }

    // What plugins compile against has the namespaces of the engine, without a word for its own assembly.
    private static string Folder(string path) =>
        Path.GetDirectoryName(path)!["src/".Length..].Replace("RoutingRules.Abstractions", "RoutingRules", StringComparison.Ordinal).Replace('/', '.');

    [Fact]
    public void No_two_classes_have_one_name()
    {
        var types = Rooms.Assemblies.Keys.SelectMany(assembly => CompiledTypes.Of(assembly).Types).ToList();

        // Rule and Rule<T> are one idea, and so are others that differ in what they are made for.
        Assert.InRange(types.Count, 500, int.MaxValue);
        Assert.Empty(
            types
                .GroupBy(type => type.Name, StringComparer.Ordinal)
                .Where(group => group.Count() > 1)
                .Select(group => string.Join(" and ", group.Select(type => type.FullName)))
        );
    }

    [GeneratedRegex(@"^namespace ([\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();
}
