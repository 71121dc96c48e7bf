using System.IO.Compression;
using System.Text;
using RoutingRules.Documents;
using RoutingRules.Documents.Archives;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;

namespace RoutingRules.Tests.Documents;

public sealed class ShowArchiveTests : IDisposable
{
    private readonly string path = Path.Join(Directory.CreateTempSubdirectory("routing-rules-test-").FullName, "a.zip");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);

    [Fact]
    public void The_shows_come_in_ordinal_order_and_nothing_else_comes()
    {
        Pack(
            ("b.show.json", "2"),
            ("a/z.show.json", "1"),
            ("B.show.json", "0"),
            ("notes.json", "x"),
            ("a/", ""),
            ("a.show.json/", ""),
            ("__MACOSX/._b.show.json", "x")
        );
        var shows = Read();

        Assert.Equal([$"{path}!/B.show.json", $"{path}!/a/z.show.json", $"{path}!/b.show.json"], shows.Select(show => show.Path));
        Assert.Equal(["0", "1", "2"], shows.Select(show => Encoding.UTF8.GetString(show.Utf8.Span)));
        Assert.All(shows, show => Assert.Equal((null, null, new TextPosition(1, 1)), (show.Problem?.Message, show.TextPath, show.Start)));
    }

    [Fact]
    public void Names_with_backslashes_are_paths_too()
    {
        Pack(("a\\b.show.json", "1"));

        Assert.Equal($"{path}!/a/b.show.json", Assert.Single(Read()).Path);
    }

    [Theory]
    [InlineData("../a.show.json", "__/a.show.json")]
    [InlineData("x/../../a.show.json", "x/__/__/a.show.json")]
    [InlineData("/etc/a.show.json", "_/etc/a.show.json")]
    [InlineData("C:\\a.show.json", "C_/a.show.json")]
    [InlineData("x//a.show.json", "x/_/a.show.json")]
    [InlineData("./a.show.json", "_/a.show.json")]
    [InlineData("x\u001b[2J.show.json", "x_[2J.show.json")]
    public void A_name_that_leads_elsewhere_is_not_followed_and_does_not_stop_the_others(string name, string shown)
    {
        Pack((name, "1"), ("good.show.json", "2"));
        var shows = Read();

        Assert.Equal([$"{path}!/{shown}"], shows.Where(show => show.Problem is not null).Select(show => show.Path));
        Assert.Equal([$"{path}!/good.show.json"], shows.Where(show => show.Problem is null).Select(show => show.Path));
    }

    [Fact]
    public void A_name_that_stands_there_twice_is_one_document_that_nobody_can_read()
    {
        Pack(("a.show.json", "1"), ("b.show.json", "2"), ("a.show.json", "3"));
        var shows = Read();

        Assert.Equal([$"{path}!/a.show.json", $"{path}!/b.show.json"], shows.Select(show => show.Path));
        Assert.Contains("holds 2 files of this name", shows[0].Problem!.Message, StringComparison.Ordinal);
        Assert.Null(shows[1].Problem);
    }

    [Fact]
    public void A_locked_entry_is_told()
    {
        Pack(("a.show.json", "1"), ("b.show.json", "2"));
        Change(
            static (bytes, at) =>
            {
                // General purpose bit 0 in the first local header and the first entry of the directory: APPNOTE.TXT 6.3.10, 4.3.7, 4.3.12 and 4.4.4 (from
                // memory).
                bytes[at("PK\u0003\u0004") + 6] |= 1;
                bytes[at("PK\u0001\u0002") + 8] |= 1;
            }
        );
        var shows = Read();

        Assert.Contains("locked with a password", shows[0].Problem!.Message, StringComparison.Ordinal);
        Assert.Null(shows[1].Problem);
    }

    [Fact]
    public void A_damaged_entry_is_told_and_the_others_are_read()
    {
        foreach (var level in new[] { CompressionLevel.NoCompression, CompressionLevel.Optimal })
        {
            Pack(level, ("a.show.json", "the content of the first, the content of the first"), ("b.show.json", "2"));
            Change(static (bytes, at) => bytes[at("a.show.json") + 11 + 5] ^= 0x55);
            var shows = Read();

            Assert.Contains("cannot be unpacked, or is not what the archive says", shows[0].Problem!.Message, StringComparison.Ordinal);
            Assert.Equal("2", Encoding.UTF8.GetString(shows[1].Utf8.Span));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(200)]
    public void A_directory_that_lies_about_the_length_is_told(byte length)
    {
        Pack(CompressionLevel.Optimal, ("a.show.json", "the content of the first, the content of the first"));
        Change((bytes, at) => bytes[at("PK\u0001\u0002") + 24] = length);

        Assert.NotNull(Assert.Single(Read()).Problem);
    }

    [Fact]
    public void An_entry_beyond_the_limit_is_refused_whatever_its_header_says()
    {
        Pack(("a.show.json", new string(' ', 2000)), ("b.show.json", "2"));
        var shows = Read(new ReadLimits { Bytes = 1000 });

        Assert.Contains("longer than the limit of 1000 bytes", shows[0].Problem!.Message, StringComparison.Ordinal);
        Assert.Null(shows[1].Problem);
        Change(static (bytes, at) => bytes[at("PK\u0001\u0002") + 25] = 0);
        Assert.NotNull(Read(new ReadLimits { Bytes = 1000 })[0].Problem);
    }

    [Fact]
    public void All_entries_together_have_a_limit_and_what_was_not_read_is_told()
    {
        Pack([.. Enumerable.Range(0, 9).Select(i => ($"{i}.show.json", new string(' ', 500)))]);
        var shows = Read(new ReadLimits { ArchiveBytes = 1600 });

        Assert.Equal(5, shows.Count);
        Assert.Equal(path, shows[4].Path);
        Assert.Contains("more than 1600 bytes together; 5 of them, from '4.show.json' on, were not read", shows[4].Problem!.Message, StringComparison.Ordinal);

        // Entries that are refused have been unpacked as well.
        Assert.Contains("were not read", Read(new ReadLimits { ArchiveBytes = 900, Bytes = 300 })[^1].Problem!.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ \"schemaVersion\": 1 }")]
    [InlineData("PK\u0003\u0004 and nothing behind it")]
    public void What_is_no_archive_is_told(string content)
    {
        File.WriteAllText(path, content);
        var only = Assert.Single(Read());

        Assert.Equal(path, only.Path);
        Assert.Contains("This is no zip archive, or it is cut off or damaged.", only.Problem!.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Wherever_an_archive_is_cut_off_it_is_told()
    {
        Pack(("a.show.json", "1"), ("b.show.json", "2"));
        var whole = File.ReadAllBytes(path);
        for (var length = 0; length < whole.Length; length++)
        {
            File.WriteAllBytes(path, whole[..length]);
            Assert.NotNull(Assert.Single(Read()).Problem);
        }
    }

    [Fact]
    public void Whatever_byte_of_an_archive_is_changed_no_other_content_comes_out()
    {
        Pack(("a.show.json", "the first"), ("b.show.json", "the second"));
        var whole = File.ReadAllBytes(path);
        for (var i = 0; i < whole.Length; i++)
        {
            var changed = (byte[])whole.Clone();
            changed[i] ^= 0x11;
            File.WriteAllBytes(path, changed);
            foreach (var show in Read())
            {
                Assert.True(show.Problem is not null || Encoding.UTF8.GetString(show.Utf8.Span) is "the first" or "the second");
            }
        }
    }

    [Fact]
    public void Archives_inside_are_named_and_not_opened()
    {
        Pack(("y.ZIP", "x"), ("a.show.json", "1"), ("x.zip", "x"));
        using (var archive = ShowArchive.Open(path))
        {
            Assert.Equal(["x.zip", "y.ZIP"], archive.Nested);
            Assert.Single(archive.Read());
        }

        Pack(("x.zip", "x"));
        Assert.Contains(
            "holds no file named *.show.json, only archives inside the archive, which are not opened.",
            Assert.Single(Read()).Problem!.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void An_archive_without_shows_and_a_missing_one_are_told()
    {
        Pack(("notes.txt", "x"));
        Assert.Contains("The archive holds no file named *.show.json.", Assert.Single(Read()).Problem!.Message, StringComparison.Ordinal);
        File.Delete(path);
        Assert.Contains("There is no such file.", Assert.Single(Read()).Problem!.Message, StringComparison.Ordinal);
    }

    private List<DocumentFile> Read(ReadLimits? limits = null)
    {
        using var archive = ShowArchive.Open(path, limits);
        return [.. archive.Read()];
    }

    private void Pack(params (string Name, string Content)[] entries) => Pack(CompressionLevel.Optimal, entries);

    private void Pack(CompressionLevel level, params (string Name, string Content)[] entries)
    {
        using var file = File.Create(path);
        using var zip = new ZipArchive(file, ZipArchiveMode.Create);
        foreach (var (name, content) in entries)
        {
            using var entry = zip.CreateEntry(name, level).Open();
            entry.Write(Encoding.UTF8.GetBytes(content));
        }
    }

    /// <summary>Changes bytes of the archive; places are found by what stands there first.</summary>
    private void Change(Action<byte[], Func<string, int>> change)
    {
        var bytes = File.ReadAllBytes(path);
        change(bytes, mark => bytes.AsSpan().IndexOf(Encoding.Latin1.GetBytes(mark)));
        File.WriteAllBytes(path, bytes);
    }
}
