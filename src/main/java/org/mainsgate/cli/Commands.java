package org.mainsgate.cli;

import picocli.CommandLine;

/** Makes each command with the program that it belongs to. */
final class Commands implements CommandLine.IFactory {
  private final App app;

  Commands(App app) {
    this.app = app;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    Object made = made(type);
    return made == null ? CommandLine.defaultFactory().create(type) : type.cast(made);
  }

  private @org.jspecify.annotations.Nullable Object made(Class<?> type) {
    if (type == CheckCommand.class) {
      return new CheckCommand(app);
    }
    if (type == StartCommand.class) {
      return new StartCommand(app);
    }
    if (type == AddCommand.class) {
      return new AddCommand(app);
    }
    if (type == NextCommand.class) {
      return new NextCommand(app);
    }
    if (type == ReportCommand.class) {
      return new ReportCommand(app);
    }
    if (type == CloseCommand.class) {
      return new CloseCommand(app);
    }
    if (type == TagCommand.class) {
      return new TagCommand(app);
    }
    if (type == RulesTrust.class) {
      return new RulesTrust(app);
    }
    if (type == SealCommand.class) {
      return new SealCommand(app);
    }
    if (type == HandoverCommand.class) {
      return new HandoverCommand(app);
    }
    if (type == VerifyCommand.class) {
      return new VerifyCommand(app);
    }
    if (type == AcceptCommand.class) {
      return new AcceptCommand(app);
    }
    if (type == IdentityCommand.New.class) {
      return new IdentityCommand.New(app);
    }
    if (type == IdentityCommand.Show.class) {
      return new IdentityCommand.Show(app);
    }
    if (type == IdentityCommand.Trust.class) {
      return new IdentityCommand.Trust(app);
    }
    if (type == RulesSchema.class) {
      return new RulesSchema(app);
    }
    if (type == RulesPages.class) {
      return new RulesPages(app);
    }
    if (type == RulesShow.class) {
      return new RulesShow(app);
    }
    if (type == RulesCommand.RulesCheck.class) {
      return new RulesCommand.RulesCheck(app);
    }
    return type == RulesCommand.RulesTest.class ? new RulesCommand.RulesTest(app) : null;
  }
}
