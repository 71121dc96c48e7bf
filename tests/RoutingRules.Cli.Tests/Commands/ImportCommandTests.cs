using System.Text;
using System.Text.Json;
using RoutingRules.Cli.Tests.Rig;
using RoutingRules.Documents.Formats;
using RoutingRules.Schema;

namespace RoutingRules.Cli.Tests.Commands;

/// <summary><c>export</c> and <c>import</c> of lists.</summary>
public sealed class ImportCommandTests : IDisposable
{
    private const string Renamed = "id,name\nmon,Wedge\n";

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("01")]
    [InlineData("02")]
    [InlineData("03")]
    [InlineData("04")]
    [InlineData("05")]
    public void An_example_that_goes_out_and_comes_back_keeps_every_byte(string number)
    {
        var path = Assert.Single(Directory.GetFiles(Repository.At("schema", "examples"), $"{number}-*.show.json"));
        foreach (var list in new[] { "feeds", "lines" })
        {
            var exported = Tool.Run("export", path, "--list", list, "--separator", "tab", "--utf8-mark", "--no-config", "--out", folder.At("list.csv")).Civil();
            var imported = Tool.Run("import", path, folder.At("list.csv"), "--list", list, "--remove-absent", "--no-config").Civil();

            Assert.Equal((0, 0), (exported.Code, imported.Code));
            Assert.Equal(File.ReadAllBytes(path), imported.OutBytes);
            Assert.Contains("0 new, 0 changed", imported.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_list_goes_to_standard_output_and_nothing_else()
    {
        var result = Tool.Run(["export", "-", "--list", "feeds", "--no-config"], Encoding.UTF8.GetBytes(Shows.Small)).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal("", result.Error);
        Assert.Equal(["mon,Monitor,monitor,,,desk/aux/1,box/out/1,normal,,,,no,,,,,,,,,", ""], result.Out.Split("\r\n")[1..]);
    }

    [Fact]
    public void The_show_goes_to_standard_output_and_the_account_to_standard_error()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var result = Tool.Run(["import", path, "-", "--list", "feeds", "--no-config"], Encoding.UTF8.GetBytes(Renamed)).Civil();

        Assert.Equal(0, result.Code);
        Assert.Equal(Shows.Small.Replace("\"Monitor\"", "\"Wedge\"", StringComparison.Ordinal), result.Out);
        Assert.Equal(
            "routing-rules: of 1 feeds in the list 0 new, 1 changed, 0 the same; 0 not in the list and kept; use --dry-run to see each of them.\n",
            result.Error
        );
        Assert.Equal(Shows.Small, File.ReadAllText(path));
    }

    [Fact]
    public void Out_in_place_and_dry_run_write_what_they_say()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var list = folder.Write("l.csv", Renamed);
        var dry = Tool.Run("import", path, list, "--list", "feeds", "--no-config", "--dry-run").Civil();

        Assert.Equal($"{path}: of 1 feeds in the list 0 would be new, 1 changed, 0 the same; 0 not in the list and kept\n\nchanged\n  mon: name\n", dry.Out);
        Assert.Equal(["a.show.json", "l.csv"], folder.Names);
        Assert.Equal(Shows.Small, File.ReadAllText(path));

        Assert.Equal(0, Tool.Run("import", path, list, "--list", "feeds", "--no-config", "--out", folder.At("b.show.json")).Civil().Code);
        Assert.Equal(0, Tool.Run("import", path, list, "--list", "feeds", "--no-config", "--in-place").Civil().Code);
        Assert.Contains("\"Wedge\"", File.ReadAllText(path), StringComparison.Ordinal);
        Assert.Equal(File.ReadAllText(path), File.ReadAllText(folder.At("b.show.json")));
        Assert.Equal(["a.show.json", "b.show.json", "l.csv"], folder.Names);
    }

    [Fact]
    public void Problems_are_all_told_and_nothing_is_written()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var list = folder.Write("l.csv", "id,role,to\nmon,Mon itor,\"box/out\n/1\"\nx,\n");
        var result = Tool.Run("import", path, list, "--list", "feeds", "--no-config", "--out", folder.At("b.show.json")).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains($"{list}: line 2, column \"role\": \"mon itor\" is no word", result.Error, StringComparison.Ordinal);
        Assert.Contains($"{list}: line 2, column \"to\": ", result.Error, StringComparison.Ordinal);
        Assert.Contains($"{list}: line 4: The row has 2 cells, and there are 3 headers.", result.Error, StringComparison.Ordinal);
        Assert.Equal(["a.show.json", "l.csv"], folder.Names);

        var inPlace = Tool.Run("import", path, list, "--list", "feeds", "--no-config", "--in-place", "--format", "json").Civil();
        Assert.Equal(2, inPlace.Code);
        Assert.Equal(Shows.Small, File.ReadAllText(path));
        Assert.Empty(SchemaValidator.Validate(SchemaKind.Import, inPlace.OutBytes));
        Assert.Equal(3, JsonDocument.Parse(inPlace.Out).RootElement.GetProperty("problems").GetArrayLength());
    }

    [Fact]
    public void The_account_follows_its_schema()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        var list = folder.Write("l.csv", "name;source;to\nMonitor;desk/aux/1;box/out/2\nNew;nowhere/aux/1;box\n");
        var result = Tool.Run("import", path, list, "--list", "feeds", "--no-config", "--dry-run", "--format", "json").Civil();
        var account = JsonDocument.Parse(result.Out).RootElement;

        Assert.Empty(SchemaValidator.Validate(SchemaKind.Import, result.OutBytes));
        Assert.Equal("new", account.GetProperty("added")[0].GetString());
        Assert.Equal("to", account.GetProperty("changed")[0].GetProperty("members")[0].GetString());
        Assert.Equal(3, account.GetProperty("notes")[0].GetProperty("line").GetInt32());
    }

    [Fact]
    public void The_configuration_beside_the_show_names_the_columns()
    {
        var path = folder.Write("a.show.json", Shows.Small);
        folder.Write(
            "routing-rules.json",
            """{ "schemaVersion": 1, "lists": { "separator": "semicolon", "feeds": { "columns": [ { "header": "Mix", "member": "name" } ],"""
                + """ "ignore": [ "Ink" ] } } }"""
        );
        var list = folder.Write("l.csv", "mix;id;ink;pen\nWedge;mon;red;1\n");
        var result = Tool.Run("import", path, list, "--list", "feeds", "--ignore", "Pen").Civil();

        Assert.Equal(0, result.Code);
        Assert.Contains("\"Wedge\"", result.Out, StringComparison.Ordinal);
        Assert.StartsWith("id;Mix;role;", Tool.Run("export", path, "--list", "feeds").Civil().Out, StringComparison.Ordinal);
        Assert.StartsWith("id,Mix,role,", Tool.Run("export", path, "--list", "feeds", "--separator", "comma").Civil().Out, StringComparison.Ordinal);

        folder.Write("routing-rules.json", """{ "schemaVersion": 1, "lists": { "feeds": { "ignore": [ "pack" ] } } }""");
        var clash = Tool.Run("export", path, "--list", "feeds").Civil();
        Assert.Equal((2, ""), (clash.Code, clash.Out));
        Assert.Contains("gives the header 'pack' another meaning", clash.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--list is missing", "import", "SHOW", "LIST")]
    [InlineData("--list is missing", "export", "SHOW")]
    [InlineData("--list takes feeds or lines, not 'cues'", "export", "SHOW", "--list", "cues")]
    [InlineData("--separator takes comma or semicolon or tab", "import", "SHOW", "LIST", "--list", "feeds", "--separator", "|")]
    [InlineData("not both", "import", "-", "-", "--list", "feeds")]
    [InlineData("cannot be had together", "import", "SHOW", "LIST", "--list", "feeds", "--in-place", "--out", "x")]
    [InlineData("--dry-run writes no show", "import", "SHOW", "LIST", "--list", "feeds", "--in-place", "--dry-run")]
    [InlineData("--format is for the account", "import", "SHOW", "LIST", "--list", "feeds", "--format", "json")]
    [InlineData("cannot be written in place", "import", "-", "LIST", "--list", "feeds", "--in-place")]
    [InlineData("There is no such file", "import", "SHOW", "nowhere.csv", "--list", "feeds")]
    [InlineData("There is no such file", "import", "nowhere.json", "LIST", "--list", "feeds")]
    [InlineData("There is no such file", "export", "nowhere.json", "--list", "feeds")]
    [InlineData("is the input itself", "import", "SHOW", "LIST", "--list", "feeds", "--out", "LIST")]
    [InlineData("is the input itself", "import", "SHOW", "LIST", "--list", "feeds", "--out", "SHOW")]
    [InlineData("is the input itself", "export", "SHOW", "--list", "feeds", "--out", "SHOW")]
    [InlineData("the list is empty", "import", "SHOW", "EMPTY", "--list", "feeds")]
    [InlineData("UTF-16", "import", "SHOW", "WIDE", "--list", "feeds")]
    [InlineData("not UTF-8", "import", "SHOW", "LATIN", "--list", "feeds")]
    public void Wrong_usage_ends_with_two_and_writes_nothing(string expected, params string[] arguments)
    {
        folder.Write("SHOW", Shows.Small);
        folder.Write("LIST", Renamed);
        folder.Write("EMPTY", "\n \n".Replace(" ", "", StringComparison.Ordinal));
        folder.Write("WIDE", Encoding.Unicode.GetBytes(Renamed));
        folder.Write("LATIN", Encoding.Latin1.GetBytes("id,name\nmon,\u00d6hr"));
        var names = folder.Names;
        var result = Tool.Run([.. arguments.Select(argument => names.Contains(argument) ? folder.At(argument) : argument)], Encoding.UTF8.GetBytes(Shows.Small))
            .Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains(expected, result.Error, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(names, folder.Names);
        Assert.Equal(Shows.Small, File.ReadAllText(folder.At("SHOW")));
    }

    [Theory]
    [InlineData("export")]
    [InlineData("import")]
    public void Broken_shows_are_refused(string command)
    {
        var path = folder.Write("SHOW", Shows.Small[..200]);
        var list = folder.Write("LIST", Renamed);
        string[] arguments = command == "export" ? ["export", path] : ["import", path, list];
        var result = Tool.Run([.. arguments, "--list", "feeds", "--no-config", "--out", folder.At("x")]).Civil();

        Assert.Equal((2, ""), (result.Code, result.Out));
        Assert.Contains("the text ends before the document does", result.Error, StringComparison.Ordinal);
        Assert.Equal(["LIST", "SHOW"], folder.Names);
    }
}
