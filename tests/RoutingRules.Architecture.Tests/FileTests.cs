namespace RoutingRules.Architecture.Tests;

/// <summary>Small files, lines that fit a window, rooms one can look at.</summary>
public class FileTests
{
    private const int MaxLines = 300;

    private const int MaxColumns = 160;

    [Fact]
    public void No_file_has_more_than_300_lines()
    {
        var files = All().Where(path => SourceFiles.Lines(path).Length > MaxLines).ToList();

        Assert.True(files.Count == 0, $"{files.Count} files have more than {MaxLines} lines: {string.Join(", ", files)}");
    }

    [Fact]
    public void No_line_has_more_than_160_characters()
    {
        var lines = All()
            .SelectMany(path => SourceFiles.Lines(path).Index().Where(line => line.Item.Length > MaxColumns).Select(line => $"{path}:{line.Index + 1}"))
            .ToList();

        Assert.True(lines.Count == 0, $"{lines.Count} lines have more than {MaxColumns} characters: {string.Join(", ", lines)}");
    }

    [Fact]
    public void A_room_has_few_enough_files_to_look_at()
    {
        var rooms = SourceFiles
            .CSharp("src")
            .GroupBy(path => Path.GetDirectoryName(path)!)
            .Where(room => room.Count() > 56)
            .Select(room => $"{room.Key}: {room.Count()}");

        Assert.Empty(rooms);
    }

    private static IReadOnlyList<string> All() => SourceFiles.CSharp("src", "plugins", "tests", "benchmarks");
}
