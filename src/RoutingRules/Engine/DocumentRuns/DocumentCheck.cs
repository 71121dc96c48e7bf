using RoutingRules.Documents;
using RoutingRules.Documents.Tables;
using RoutingRules.Documents.Text;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Engine.DocumentRuns;

/// <summary>One document with everything there is to report about it.</summary>
/// <remarks>Immutable. Findings have line and column wherever the text allows it.</remarks>
public sealed record DocumentCheck
{
    /// <summary>In <see cref="UndecidedSubject.Rule"/>: every rule of the engine.</summary>
    public const string EveryRule = "*";

    /// <summary>The path, or another name that tells people which document it is.</summary>
    public required string Path { get; init; }

    /// <summary>
    /// The text in which lines and columns count, when the document is one of several in it, such as a file of JSON lines; null when it has a text of its own.
    /// </summary>
    public string? TextPath { get; init; }

    /// <summary>The findings of reader and rules that count, and how each rule ended, whether or not its findings are excused.</summary>
    public required CheckResult Result { get; init; }

    /// <summary>Findings that a waiver excuses, in their order; they are not among those of <see cref="Result"/>.</summary>
    public ValueList<WaivedFinding> Waived { get; init; }

    /// <summary>Findings that the baseline knows, in their order; they are not among those of <see cref="Result"/>.</summary>
    public ValueList<Finding> Known { get; init; }

    /// <summary>What the baseline knows of the document and the check no longer finds.</summary>
    public ValueList<BaselineFinding> Gone { get; init; }

    /// <summary>True when the document was compared with a baseline.</summary>
    public bool IsCompared { get; init; }

    /// <summary>The show; null when the document could not be read in full.</summary>
    public Show? Show { get; init; }

    /// <summary>The fixes offered for findings, when they were asked for; see <see cref="WithFixes"/>.</summary>
    public ValueList<FindingOffers> Offers { get; init; }

    /// <summary>What the findings come from, when it was asked for; see <see cref="WithCauses"/>.</summary>
    public ValueList<OfferedCause> Causes { get; init; }

    /// <summary>What it came to.</summary>
    public DocumentStatus Status =>
        !Result.WasRead ? DocumentStatus.Unreadable
        : !Result.Findings.IsEmpty ? DocumentStatus.Findings
        : !Result.Undecided.IsEmpty ? DocumentStatus.Undecided
        : DocumentStatus.Clean;

    /// <summary>Reads a show and runs the rules on it. Never throws for what the document holds.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="path">What to call the document.</param>
    /// <param name="utf8Json">The text.</param>
    /// <param name="cancellation">Stops between subjects of rules.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public static DocumentCheck Run(RoutingEngine engine, string path, ReadOnlySpan<byte> utf8Json, CancellationToken cancellation = default) =>
        Run(engine, path, utf8Json, null, cancellation);

    /// <summary>The same under the eyes of an observer.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="path">What to call the document.</param>
    /// <param name="utf8Json">The text.</param>
    /// <param name="observer">Told when each rule starts and ends; null for nobody.</param>
    /// <param name="cancellation">Stops between subjects of rules.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public static DocumentCheck Run(
        RoutingEngine engine,
        string path,
        ReadOnlySpan<byte> utf8Json,
        RuleObserver? observer,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(path);
        var read = ShowReader.Read(utf8Json);
        if (!read.IsUsable)
        {
            return new DocumentCheck { Path = path, Result = ReadingResults.Unread(engine, read.Findings) };
        }

        var result = observer is null ? engine.Check(read.Value!, cancellation) : engine.Check(read.Value!, observer, cancellation);
        return new DocumentCheck
        {
            Path = path,
            Show = read.Value,
            Result = result with
            {
                Findings = ReadingResults.IsUpgraded(read.Findings)
                    ? ReadingResults.Merge(read.Findings, result.Findings)
                    : ReadingResults.Merge(read.Findings, result.Findings).Locate(utf8Json),
                Rules = [.. ReadingResults.Outcomes(read.Findings, RuleStatus.Passed), .. result.Rules],
            },
        };
    }

    /// <summary>The check of a document as it was loaded, with what its findings come from, and its places counted in the text that holds it.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="file">The document; one that could not be had is unreadable.</param>
    /// <param name="offersFixes">Whether to try fixes for each finding, see <see cref="WithFixes"/>.</param>
    /// <param name="observer">Told when each rule starts and ends; null for nobody.</param>
    /// <param name="asOf">The day for which the show's own waivers count; null to leave them unread.</param>
    /// <param name="cancellation">Stops between subjects of rules.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public static DocumentCheck Run(
        RoutingEngine engine,
        DocumentFile file,
        bool offersFixes = false,
        RuleObserver? observer = null,
        DateOnly? asOf = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(file);
        var check = file.Problem is { } problem ? Unreadable(engine, file.Path, problem) : Run(engine, file.Path, file.Utf8.Span, observer, cancellation);
        check = file.Problem is null ? check.WithCauses(engine, file.Utf8, cancellation) : check;
        check = offersFixes ? check.WithFixes(engine, file.Utf8, cancellation) : check;
        check = asOf is { } day ? check.WithOwnWaivers(engine, day, file.Utf8) : check;
        return file.TextPath is null ? check : check.Moved(file.Start) with { TextPath = file.TextPath };
    }

    /// <summary>A document that could not be had or not be read in full.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="path">What to call the document.</param>
    /// <param name="problems">Why not: at least one finding.</param>
    public static DocumentCheck Unreadable(RoutingEngine engine, string path, params ValueList<Finding> problems)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(path);
        return new DocumentCheck { Path = path, Result = ReadingResults.Unread(engine, problems) };
    }

    /// <summary>A check that was made already, such as that of an assigned show, with its findings located in the text of the show.</summary>
    /// <param name="path">What to call the document.</param>
    /// <param name="show">The show.</param>
    /// <param name="result">What the rules said about it.</param>
    /// <param name="utf8Json">The show as written.</param>
    public static DocumentCheck Of(string path, Show show, CheckResult result, ReadOnlySpan<byte> utf8Json)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(result);
        return new DocumentCheck
        {
            Path = path,
            Show = show,
            Result = result with { Findings = result.Findings.Locate(utf8Json) },
        };
    }

    /// <summary>
    /// The check with the fixes that hold for each finding. Each is tried, at the cost of one check of the show. There are none for a document of an older
    /// format version: they would be edits of a text that nobody has.
    /// </summary>
    /// <param name="engine">The engine that checked.</param>
    /// <param name="utf8Json">The text that was checked.</param>
    /// <param name="cancellation">Stops between findings.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public DocumentCheck WithFixes(RoutingEngine engine, ReadOnlyMemory<byte> utf8Json, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        if (Show is null || ReadingResults.IsUpgraded(Result.Findings))
        {
            return this;
        }

        var resolved = engine.Resolve(Show);
        var found = new List<FindingOffers>();
        foreach (var finding in Result.Findings)
        {
            var offers = engine.OfferFixes(resolved, Result, finding, cancellation);
            if (!offers.IsEmpty)
            {
                found.Add(
                    new FindingOffers
                    {
                        Fingerprint = finding.Fingerprint(),
                        Offers = offers.Select(fix => OfferedFix.Of(fix, Show, utf8Json.Span)).ToValueList(),
                    }
                );
            }
        }

        return this with
        {
            Offers = found.ToValueList(),
        };
    }

    /// <summary>
    /// The check with what its findings come from: see <see cref="RoutingEngine.Diagnose"/>. Costs nothing where nothing is graver than a note, else a few
    /// checks of the show. The repairs of a document of an older format version stand without patches: there is no text that they would change.
    /// </summary>
    /// <param name="engine">The engine that checked.</param>
    /// <param name="utf8Json">The text that was checked.</param>
    /// <param name="cancellation">Stops between repairs that are tried.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public DocumentCheck WithCauses(RoutingEngine engine, ReadOnlyMemory<byte> utf8Json, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        if (Show is null || Result.Worst is null or Severity.Note)
        {
            return this;
        }

        // What the reader says stays whatever is mended, so it is no part of what is to be explained.
        var ruled = Result with
        {
            Findings = Result.Findings.Where(static finding => !ReadingRules.All.Any(rule => rule.Id == finding.Rule)).ToValueList(),
        };
        var causes = engine.Diagnose(engine.Resolve(Show), ruled, cancellation);
        var isUpgraded = ReadingResults.IsUpgraded(Result.Findings);
        return this with { Causes = causes.Select((cause, i) => OfferedCause.Of(cause, i + 1, isUpgraded ? null : Show, utf8Json.Span)).ToValueList() };
    }

    /// <summary>The name that places in the text go with.</summary>
    internal string PlacePath => TextPath ?? Path;

    internal ValueList<OfferedFix> OffersFor(Finding finding)
    {
        var fingerprint = Offers.IsEmpty ? "" : finding.Fingerprint();
        foreach (var offers in Offers)
        {
            if (offers.Fingerprint == fingerprint)
            {
                return offers.Offers;
            }
        }

        return default;
    }

    /// <summary>The check with its places counted in a text in which the document begins at <paramref name="start"/>.</summary>
    private DocumentCheck Moved(TextPosition start) =>
        this with
        {
            Result = Result with
            {
                Findings = Result
                    .Findings.Select(finding =>
                        finding.Line is { } line && start.Of(new TextPosition(line, finding.Column ?? 1)) is var at
                            ? finding with
                            {
                                Line = at.Line,
                                Column = at.Column,
                            }
                            : finding
                    )
                    .ToValueList(),
            },
            Offers = Offers.Select(offers => offers with { Offers = Moved(offers.Offers, start) }).ToValueList(),
            Causes = Causes
                .Select(cause => cause with { Repair = Moved([cause.Repair], start)[0], Alternatives = Moved(cause.Alternatives, start) })
                .ToValueList(),
        };

    private static ValueList<OfferedFix> Moved(ValueList<OfferedFix> offers, TextPosition start) =>
        offers
            .Select(offer =>
                offer.Change is { } change ? offer with { Change = change with { Start = start.Of(change.Start), End = start.Of(change.End) } } : offer
            )
            .ToValueList();
}
