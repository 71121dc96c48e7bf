using RoutingRules.Documents;

namespace RoutingRules.Tests.Documents;

public sealed class DocumentFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("reading-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_file_is_read_like_its_text()
    {
        var path = Path.Combine(folder, "a.show.json");
        File.WriteAllText(path, Sample.Show);

        Assert.Equal(Sample.Good(Sample.Show), ShowReader.ReadFile(path).Value);
        Assert.Null(DocumentFile.Load(path).Problem);
        Assert.Equal(File.ReadAllBytes(path), DocumentFile.Load(path).Utf8.ToArray());
    }

    [Fact]
    public void A_missing_file_is_a_finding() => Assert.Equal("There is no such file.", Problem(Path.Combine(folder, "none.json")));

    [Fact]
    public void A_file_in_a_missing_folder_is_a_finding() => Assert.Equal("There is no such file.", Problem(Path.Combine(folder, "none", "none.json")));

    [Fact]
    public void A_folder_is_a_finding() => Assert.Equal("This is a folder, not a file.", Problem(folder));

    [Fact]
    public void A_path_that_cannot_be_one_is_a_finding() => Assert.StartsWith("The file cannot be opened", Problem("a\0b"), StringComparison.Ordinal);

    [Fact]
    public void No_path_is_a_wrong_call() => Assert.Throws<ArgumentException>(() => ShowReader.ReadFile(""));

    private static string Problem(string path)
    {
        var read = ShowReader.ReadFile(path);
        Assert.Null(read.Value);
        var finding = Assert.Single(read.Findings);
        Assert.Equal("RR1001", finding.Rule);
        return finding.Message;
    }
}
