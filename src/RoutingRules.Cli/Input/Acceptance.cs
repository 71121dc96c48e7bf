using RoutingRules.Cli.Output;
using RoutingRules.Documents;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reading;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Cli.Input;

/// <summary>The waivers and the baseline of a run.</summary>
internal sealed class Acceptance : IDisposable
{
    private readonly AcceptanceChoice choice;
    private readonly WaiverBook? waivers;
    private readonly ReadOnlyMemory<byte> waiverText;
    private readonly BaselineBook? baseline;
    private readonly ReadOnlyMemory<byte> baselineText;
    private readonly OutputFile? target;

    /// <param name="choice">What the command line says.</param>
    /// <param name="shows">The shows that are checked; the baseline must not take the place of one.</param>
    /// <param name="engine">The engine that checks them.</param>
    /// <param name="console">Where files may come from.</param>
    /// <param name="cancellation">Stops waiting for input.</param>
    /// <exception cref="UsageException">A file cannot be used, or the options do not fit together.</exception>
    public Acceptance(AcceptanceChoice choice, IReadOnlyList<string> shows, RoutingEngine engine, CliConsole console, CancellationToken cancellation)
    {
        this.choice = choice;
        CheckOptions(choice);
        if (choice.Waivers is { } waiverPath)
        {
            var list = Load(
                waiverPath,
                "the waivers",
                static text => WaiverReader.Read(text),
                list => WaiverCheck.Problems(list, engine.Catalogue),
                console,
                cancellation,
                out waiverText
            );
            waivers = new WaiverBook(list, engine.Catalogue, choice.AsOf);
        }

        if (choice.Baseline is { } baselinePath)
        {
            baseline = new BaselineBook(
                choice.IsForce && !File.Exists(baselinePath)
                    ? new Baseline()
                    : Load(
                        baselinePath,
                        "the baseline",
                        static text => BaselineReader.Read(text),
                        WaiverCheck.Problems,
                        console,
                        cancellation,
                        out baselineText
                    ),
                choice.IsForce
            );
            target = choice.IsUpdate ? OutputFile.Begin(baselinePath, choice.Waivers is null ? shows : [.. shows, choice.Waivers]) : null;
        }
    }

    /// <summary>The day for which waivers count.</summary>
    public DateOnly AsOf => choice.AsOf;

    /// <summary>The place of the baseline when it is to be updated; null otherwise.</summary>
    public OutputFile? Target => target;

    /// <summary>The document with waived and known findings set apart.</summary>
    /// <param name="path">The argument that brought the document.</param>
    /// <param name="document">The document as checked; its name goes on behind that of the argument when it is one of several.</param>
    public DocumentCheck Apply(string path, DocumentCheck document)
    {
        var inside = document.Path[InputDocument.NameOf(path).Length..];
        document = waivers?.Apply(document, Relative(path, choice.Waivers!) + inside) ?? document;
        return baseline?.Apply(document, Relative(path, choice.Baseline!) + inside) ?? document;
    }

    /// <summary>Whether somebody has decided to live with a finding of a document.</summary>
    /// <param name="path">The argument that brought the document.</param>
    /// <param name="finding">The finding.</param>
    public bool Accepts(string path, Finding finding) =>
        waivers?.Excuses(finding, Relative(path, choice.Waivers!)) == true || baseline?.Knows(finding, Relative(path, choice.Baseline!)) == true;

    /// <summary>What there is to say about the waivers, once every document was applied; null without waivers.</summary>
    public DocumentCheck? Report() => waivers?.Report(choice.Waivers!, waiverText.Span);

    /// <summary>Puts the updated baseline in its place when there is one to update and it has changed.</summary>
    public void Finish()
    {
        if (target is null)
        {
            return;
        }

        var updated = BaselineWriter.ToUtf8(baseline!.Updated());
        if (!updated.AsSpan().SequenceEqual(baselineText.Span))
        {
            target.Content.Write(updated);
            target.Commit();
        }
    }

    public void Dispose() => target?.Dispose();

    private static void CheckOptions(AcceptanceChoice choice)
    {
        if (choice.Baseline is null && choice.IsUpdate)
        {
            throw new UsageException("--update-baseline needs to know which; add --baseline FILE.");
        }

        if (choice.IsForce && !choice.IsUpdate)
        {
            throw new UsageException("--force lets --update-baseline accept new findings; give both, or neither.");
        }

        if (choice.Baseline == InputDocument.StandardInput || choice.Waivers == InputDocument.StandardInput)
        {
            throw new UsageException("waivers and baselines are read from files, because paths in them are relative to their folder; name a file.");
        }

        if (choice is { Baseline: { Length: > 0 } path, IsForce: false } && !File.Exists(path) && !Directory.Exists(path))
        {
            throw new UsageException(
                $"there is no baseline '{path}'. Check the path; to begin one that accepts everything found now, use check with --update-baseline --force."
            );
        }
    }

    private static T Load<T>(
        string path,
        string title,
        Func<ReadOnlySpan<byte>, ReadResult<T>> read,
        Func<T, ValueList<Finding>> check,
        CliConsole console,
        CancellationToken cancellation,
        out ReadOnlyMemory<byte> text
    )
        where T : class
    {
        var file = InputDocument.Load(path, console, cancellation);
        var result = file.Problem is { } problem ? new ReadResult<T> { Findings = [problem] } : read(file.Utf8.Span);
        var findings = result.IsUsable ? check(result.Value!).Locate(file.Utf8.Span) : result.Findings;
        text = file.Utf8;
        return result.IsUsable && findings.IsEmpty
            ? result.Value!
            : throw new UsageException($"{title} cannot be used.\n{string.Join('\n', findings.Select(finding => ConfigSetup.Line(path, finding)))}");
    }

    /// <summary>The path of a document as waivers and baselines write it: with slashes, from the folder of their file.</summary>
    private static string Relative(string document, string file)
    {
        if (document.Length == 0 || document == InputDocument.StandardInput)
        {
            return document;
        }

        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        return Path.GetRelativePath(folder, document).Replace(Path.DirectorySeparatorChar, '/');
    }
}
