namespace Logbook.Screens;

/// <summary>The state after a message. Sends each message to where it belongs; decides nothing itself.</summary>
internal static class Step
{
    public static Next Of(Session session, Message message, Setting setting) => message switch
    {
        Pressed pressed when pressed.Key.Is('!') && session.Top is not EmergencyPage && !session.Top.IsWriting => EmergencyPage.Open(Heard(session, setting)),
        Pressed pressed => session.Top.Keys.Press(Heard(session, setting) with { Leaving = session.Leaving && pressed.Key.Is('q') }, pressed.Key, setting),
        Pasted pasted => Pasting.Paste(Heard(session, setting), pasted.Text),
        PastedColumn column => Pasting.Line(session, column, setting),
        Resized size => Next.Of(session with { Width = Math.Max(1, size.Width), Height = Math.Max(1, size.Height) }),
        Ticked => Saving.Tick(NowPage.Left(OwnPage.Left(SignPage.Left(session with { Clock = setting.Now })))),
        FactsChanged changed => Followed(CarriedPage.Followed(session, changed.Facts) with { Clock = changed.Facts.Now.At }),
        EntrySaved saved => Saving.Saved(session, saved.Record),
        EntryNotSaved not => Next.Of(Saving.NotSaved(session, not.Why)),
        DraftKept => Next.Of(session with { DraftKeptAt = session.Clock }),
        DraftNotKept not => Next.Of(session.Say($"NOT ON THE DISK, only here: {not.Why}", Look.Urgent)),
        RoundOpened opened => RoundOpening.Open(session, opened, setting),
        LookedBack looked => Next.Of(RoundOpening.LookedBack(session, looked)),
        LogRead read => LogReading.Read(session, read),
        SeriesRead read => GraphPage.Taken(session, read),
        RelatedRead read => Next.Of(RelatedPage.Open(session, read)),
        Wrote wrote => Written(session, wrote) is var after && after.Top is RecordPage shown && wrote.What is CorrectReadings ? Next.Of(after, new ReadRecord(shown.Record.Seq)) : Next.Of(after),
        CorrectAsked => session.Top is RecordPage ? RecordAsks.Correct(session) : Next.Of(session),
        AuditRead read => Next.Of(AuditPage.Taken(session, read)),
        RecordRead read => Next.Of(RecordPage.Read(session, read)),
        PageShown shown => Receiving.Shown(session, shown),
        OverRead read => Next.Of(GivePage.Read(session, read.Over)),
        AllRead read => Receiving.Questions(session, read),
        StepTaken taken => Handing.Taken(session, taken),
        Troubled trouble => Next.Of(session.Say(trouble.Why, Look.Urgent)),
        _ => throw new InvalidOperationException($"no such message: {message}"),
    };

    /// <summary>What is on the screen goes with what was written.</summary>
    private static Next Followed(Session session)
    {
        var next = LogReading.Follow(session);
        return session.Top is GraphPage graph ? next with { Effects = [.. next.Effects, graph.Ask(session)] }
            : session.Pages.Exists(p => p is GivePage) ? next with { Effects = [.. next.Effects, new ReadOver()] } : next;
    }

    /// <summary>What asked for it stays open when nothing was written, with what was typed.</summary>
    private static Session Written(Session session, Wrote wrote)
    {
        if (wrote.Written.Record is not { } record)
        {
            return session.Say(InKeys.Of(string.Join("; ", wrote.Written.Mistakes)), Look.Watch);
        }

        session = wrote.What is ConfirmCarried confirmed ? CarriedPage.Looked(session.Asked(), confirmed.Look.Id) : session.Asked();
        session = session.Top is PickReadingPage ? session.Back() : session;
        session = wrote.What is CorrectReadings right ? FindingsPage.Corrected(session, right.Target, record) : session;
        return wrote.Warning is { } warning ? session.Say(warning, Look.Hurts) : session.Say($"{wrote.What.Done} {Handover.Say.Ref(record.Seq)}");
    }

    private static Session Heard(Session session, Setting setting) => session with { Clock = setting.Now, LastKey = setting.Now, Said = new Span(""), Looking = null };
}
