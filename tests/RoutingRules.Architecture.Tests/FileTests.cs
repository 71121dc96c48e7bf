namespace RoutingRules.Architecture.Tests;

/// <summary>Small files and lines that fit a window.</summary>
/// <remarks>Files and lines from before the limits are counted: a count may only fall, and the limit here falls with it.</remarks>
public class FileTests
{
    private const int MaxLines = 300;

    private const int MaxColumns = 160;

    private const int LongFiles = 3;

    private const int LongLines = 3;

    [Fact]
    public void No_further_file_has_more_than_300_lines()
    {
        var files = All().Where(path => SourceFiles.Lines(path).Length > MaxLines).ToList();

        Assert.True(files.Count <= LongFiles, $"{files.Count} files have more than {MaxLines} lines: {string.Join(", ", files)}");
    }

    [Fact]
    public void No_further_line_has_more_than_160_characters()
    {
        var count = All().Sum(path => SourceFiles.Lines(path).Count(line => line.Length > MaxColumns));

        Assert.InRange(count, 0, LongLines);
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
