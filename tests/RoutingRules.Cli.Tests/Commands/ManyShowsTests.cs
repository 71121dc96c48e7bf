using System.IO.Compression;
using System.Text.Json;
using System.Xml.Linq;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Schema;
using static RoutingRules.Cli.Tests.Commands.ManyShowsFolder;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary><c>check</c> of zip archives and of several shows in one text.</summary>
public sealed class ManyShowsTests : IDisposable
{
    private readonly ManyShowsFolder shows = new();

    public void Dispose() => shows.Dispose();

    [Fact]
    public void Every_show_of_an_archive_is_checked_and_named_behind_the_archive()
    {
        var zip = Pack("a.zip", ("day 2/b.show.json", One("y")), ("a.show.json", One("x")), ("notes.txt", "x"));
        var result = shows.Check([], zip).Civil();

        Assert.Equal(1, result.Code);
        Assert.Contains($"{zip}!/a.show.json: 1 error, 0 warnings, 0 notes\n", result.Out, StringComparison.Ordinal);
        Assert.Contains($"    {zip}!/day 2/b.show.json:1:59: Device y was looked at.\n", result.Out, StringComparison.Ordinal);
        Assert.Contains("2 documents: ", result.Out, StringComparison.Ordinal);
        Assert.Equal("", result.Error);
    }

    [Fact]
    public void An_entry_that_cannot_be_read_does_not_stop_the_others()
    {
        var zip = Pack("a.zip", ("../up.show.json", One("x")), ("cut.show.json", "{"), ("good.show.json", One("y")), ("inner.zip", "x"));
        var result = shows.Check([], zip).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains($"{zip}!/__/up.show.json: not read in full", result.Out, StringComparison.Ordinal);
        Assert.Contains($"{zip}!/cut.show.json:1:2: ", result.Out, StringComparison.Ordinal);
        Assert.Contains("Device y was looked at.", result.Out, StringComparison.Ordinal);
        Assert.Contains("3 documents: 0 clean, 1 with something to look at, 2 unreadable", result.Out, StringComparison.Ordinal);
        Assert.Contains($"'{zip}' holds archives that were not opened: inner.zip.", result.Error, StringComparison.Ordinal);
        Assert.Equal("", shows.Check([], zip, "--quiet").Civil().Error);
    }

    [Theory]
    [InlineData("a.zip")]
    [InlineData("a.ZIP")]
    public void What_is_no_archive_or_holds_no_show_is_an_unreadable_document(string name)
    {
        var none = shows.Check([], shows.Folder.Write(name, One("x"))).Civil();
        Assert.Equal(2, none.Code);
        Assert.Contains("This is no zip archive, or it is cut off or damaged.", none.Out, StringComparison.Ordinal);
        var empty = shows.Check([], Pack(name, ("a.json", One("x")))).Civil();
        Assert.Equal(2, empty.Code);
        Assert.Contains("The archive holds no file named *.show.json.", empty.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void An_archive_under_another_name_is_told_as_what_it_is()
    {
        var zip = Pack("a.zip", ("a.show.json", One("x")));
        File.Move(zip, shows.Folder.At("a.show.json"));
        var result = shows.Check([], shows.Folder.At("a.show.json")).Civil();

        Assert.Equal(2, result.Code);
        Assert.Contains("The file is a zip archive.", result.Out, StringComparison.Ordinal);
        Assert.Contains("under a name that ends with .zip", result.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Archives_in_a_folder_are_checked_only_when_they_are_named()
    {
        var zip = Pack("shows/old.zip", ("a.show.json", One("x")));
        var alone = shows.Check([], shows.Folder.At("shows")).Civil();
        Assert.Equal(2, alone.Code);
        Assert.Contains($"name those that are to be checked, such as '{zip}'", alone.Error, StringComparison.Ordinal);

        shows.Folder.Write("shows/b.show.json", One("y"));
        Assert.DoesNotContain("Device x", shows.Check([], shows.Folder.At("shows")).Civil().Out, StringComparison.Ordinal);
        Assert.Contains("Device x", shows.Check([], shows.Folder.At("shows"), zip).Civil().Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bomb_is_refused_and_takes_no_more_memory_than_one_show()
    {
        var zip = shows.Folder.At("a.zip");
        using (var file = File.Create(zip))
        using (var archive = new ZipArchive(file, ZipArchiveMode.Create))
        {
            using var entry = archive.CreateEntry("bomb.show.json", CompressionLevel.Fastest).Open();
            var blanks = new byte[1024 * 1024];
            Array.Fill(blanks, (byte)' ');
            for (var i = 0; i < 200; i++)
            {
                entry.Write(blanks);
            }
        }

        var before = GC.GetAllocatedBytesForCurrentThread();
        var result = shows.Check([], zip).Civil();
        var taken = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.Equal(2, result.Code);
        Assert.Contains("longer than the limit of 67108864 bytes", result.Out, StringComparison.Ordinal);

        // More than nothing, so the work is this thread's; other tests run at the same time.
        Assert.InRange(taken, 64 * 1024, 200 * 1024 * 1024);
    }

    [Fact]
    public void Every_format_names_the_document_and_the_text_that_lines_count_in()
    {
        var zip = Pack("a b.zip", ("ä/b.show.json", One("x")), ("cut.show.json", "{"));
        var lines = shows.Folder.Write("l.jsonl", $"{One("y")}\n{One("z")}\n{{\n");
        var formats = ReportFormats.All.Select(format => format.Name).ToList();
        var result = shows.Check([], [zip, lines, .. formats.SelectMany(format => new[] { "--report", $"{format}={shows.Folder.At("r." + format)}" })]).Civil();
        var root = Uri.EscapeDataString(shows.Folder.Root).Replace("%2F", "/", StringComparison.Ordinal);
        string Of(string format) => File.ReadAllText(shows.Folder.At("r." + format));

        Assert.Equal(2, result.Code);
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Report, File.ReadAllBytes(shows.Folder.At("r.json"))));
        var documents = JsonDocument.Parse(Of("json")).RootElement.GetProperty("documents").EnumerateArray().ToList();
        Assert.Equal(
            [$"{zip}!/cut.show.json", $"{zip}!/ä/b.show.json", $"{lines}!/1", $"{lines}!/2", $"{lines}!/3"],
            documents.Select(document => document.GetProperty("path").GetString())
        );
        Assert.Equal([null, null, lines, lines, lines], documents.Select(document => document.TryGetProperty("text", out var text) ? text.GetString() : null));
        Assert.Equal(2, documents[3].GetProperty("findings")[0].GetProperty("line").GetInt32());

        var results = JsonDocument.Parse(Of("sarif")).RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().ToList();
        var places = results.Select(each => each.GetProperty("locations")[0].GetProperty("physicalLocation")).ToList();
        Assert.Equal(
            [
                $"file://{root}/a%20b.zip%21/cut.show.json",
                $"file://{root}/a%20b.zip%21/%C3%A4/b.show.json",
                $"file://{root}/l.jsonl",
                $"file://{root}/l.jsonl",
                $"file://{root}/l.jsonl",
            ],
            places.Select(place => place.GetProperty("artifactLocation").GetProperty("uri").GetString())
        );

        // Source: RFC 3986, section 3.3: what a segment of a path may hold.
        Assert.All(
            places,
            place =>
                Assert.Matches(
                    @"^file://(/([A-Za-z0-9\-._~!$&'()*+,;=:@]|%[0-9A-F]{2})+)+$",
                    place.GetProperty("artifactLocation").GetProperty("uri").GetString()
                )
        );
        Assert.Equal(2, places[3].GetProperty("region").GetProperty("startLine").GetInt32());
        Assert.Equal(
            [$"{lines}!/1", $"{lines}!/2", $"{lines}!/3"],
            results[2..].Select(each => each.GetProperty("properties").GetProperty("document").GetString())
        );

        Assert.Equal(
            [$"{zip}!/cut.show.json", $"{zip}!/ä/b.show.json", $"{lines}!/1", $"{lines}!/2", $"{lines}!/3"],
            XDocument.Parse(Of("junit")).Root!.Elements("testsuite").Select(suite => suite.Attribute("name")!.Value).SkipLast(1)
        );
        Assert.Contains($"{lines}:2:59: Device z", Of("junit"), StringComparison.Ordinal);
        Assert.Contains($"::error file={zip}!/ä/b.show.json,line=1,col=59,", Of("github"), StringComparison.Ordinal);
        Assert.Contains($"::error file={lines},line=2,col=59,", Of("github"), StringComparison.Ordinal);
        Assert.Contains("l.jsonl!/2", Of("html"), StringComparison.Ordinal);
        Assert.Contains("l.jsonl!/2", Of("markdown").Replace("\\", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("2:59", Of("html"), StringComparison.Ordinal);
        Assert.Equal(result.Out, Of("text"));
    }

    [Fact]
    public void A_baseline_and_waivers_know_documents_by_their_names_inside()
    {
        var zip = Pack("in/a.zip", ("x/1.show.json", One("x")), ("2.show.json", One("y")));
        var lines = shows.Folder.Write("in/l.jsonl", $"{One("z")}\n{One("w")}\n");
        var baseline = shows.Folder.At("baseline.json");
        Assert.Equal(0, shows.Check([], zip, lines, "--baseline", baseline, "--update-baseline", "--force").Civil().Code);
        var known = BaselineReader.Read(File.ReadAllBytes(baseline)).Value!;

        Assert.Equal(["in/a.zip!/2.show.json", "in/a.zip!/x/1.show.json", "in/l.jsonl!/1", "in/l.jsonl!/2"], known.Documents.Select(document => document.Path));
        Assert.Equal(0, shows.Check([], zip, lines, "--baseline", baseline).Civil().Code);

        // The second show of each is mended, and the baseline shrinks by just that.
        Pack("in/a.zip", ("x/1.show.json", One("x")), ("2.show.json", """{ "schemaVersion": 1, "title": "T", "rig": {} }"""));
        Assert.Equal(0, shows.Check([], zip, "--baseline", baseline, "--update-baseline").Civil().Code);
        Assert.Equal(
            ["in/a.zip!/x/1.show.json", "in/l.jsonl!/1", "in/l.jsonl!/2"],
            BaselineReader.Read(File.ReadAllBytes(baseline)).Value!.Documents.Select(document => document.Path)
        );

        var waivers = shows.Folder.Write(
            "in/waivers.json",
            """
            { "schemaVersion": 1, "waivers": [
              { "rule": "TT1001", "entities": [ { "role": "device", "id": "x" } ], "reason": "R",
                "owner": "O", "expires": "2027-06-30", "scope": [ "a.zip!/**" ] },
              { "rule": "TT1001", "entities": [ { "role": "device", "id": "z" } ], "reason": "R",
                "owner": "O", "expires": "2027-06-30", "scope": [ "l.jsonl!/1" ] } ] }
            """
        );
        var waived = shows.Check([], zip, lines, "--waivers", waivers, "--as-of", "2027-06-12", "--format", "json").Civil();
        Assert.Equal(
            [0, 0, 0, 1],
            JsonDocument
                .Parse(waived.OutBytes)
                .RootElement.GetProperty("documents")
                .EnumerateArray()
                .Take(4)
                .Select(document => document.GetProperty("findings").GetArrayLength())
        );
        Assert.Equal(1, waived.Code);
        var input = shows.Check(Bytes($"{One("z")}\n{One("w")}\n"), "-", "--baseline", baseline, "--update-baseline", "--force").Civil();
        Assert.Equal(0, input.Code);
        Assert.Contains("-!/2", BaselineReader.Read(File.ReadAllBytes(baseline)).Value!.Documents.Select(document => document.Path));
    }

    private string Pack(string name, params (string Name, string Content)[] entries)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(shows.Folder.At(name))!);
        using var file = File.Create(shows.Folder.At(name));
        using var zip = new ZipArchive(file, ZipArchiveMode.Create);
        foreach (var (entry, content) in entries)
        {
            using var stream = zip.CreateEntry(entry).Open();
            stream.Write(Bytes(content));
        }

        return shows.Folder.At(name);
    }
}
